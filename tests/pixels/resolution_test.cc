// Resolution tags of TIFF, believable and not.

#include "pixels/test_files.h"

#include <fogline/pixels/open_scan.h>

#include <algorithm>

#include <gtest/gtest.h>

namespace fogline {
namespace {

struct Case {
  float x;
  float y;
  int unit;
  double per_mm;
  bool odd;
};

TEST(Resolution, TagsInInchAndCentimetre) {
  const test::TempFolder folder;
  const std::string path = folder.file("scan.tif");
  for (const Case& one :
       {Case{2400, 2400, RESUNIT_INCH, 2400 / 25.4, false},
        Case{1600, 1600, RESUNIT_CENTIMETER, 160.0, false},
        Case{2400, 2410, RESUNIT_INCH, 2405 / 25.4, false},
        Case{2400, 2400, RESUNIT_NONE, 0.0, false}, Case{2400, 1200, RESUNIT_INCH, 0.0, true},
        Case{20, 20, RESUNIT_INCH, 0.0, true}, Case{0, 0, RESUNIT_INCH, 0.0, true},
        Case{30000, 30000, RESUNIT_INCH, 0.0, true}}) {
    test::TiffSpec spec;
    spec.more_tags = [&](TIFF* tiff) {
      TIFFSetField(tiff, TIFFTAG_XRESOLUTION, one.x);
      TIFFSetField(tiff, TIFFTAG_YRESOLUTION, one.y);
      TIFFSetField(tiff, TIFFTAG_RESOLUTIONUNIT, one.unit);
    };
    test::write_tiff(path, spec);
    const auto scan = open_scan(path, {});
    const ScanInfo& info = scan->info();
    EXPECT_EQ(info.tag_pixels_per_mm.has_value(), one.per_mm > 0.0) << one.x;
    EXPECT_NEAR(info.tag_pixels_per_mm.value_or(0.0), one.per_mm, 1e-3) << one.x;
    EXPECT_EQ(std::any_of(
                  info.cautions.begin(), info.cautions.end(),
                  [](const Caution& c) { return c.fact.kind == CautionKind::resolution_tag_odd; }),
              one.odd)
        << one.x;
  }
}

}  // namespace
}  // namespace fogline
