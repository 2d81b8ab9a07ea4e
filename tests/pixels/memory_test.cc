// A reading keeps little resident, however a file is packed: the small-scale version of the budget
// of 256 MB for any file.

#include "pixels/exact_light.h"
#include "pixels/test_files.h"

#include <fogline/pixels/open_scan.h>

#include <fstream>
#include <string>

#include <gtest/gtest.h>

#if defined(__SANITIZE_ADDRESS__)
#define FOGLINE_MEMORY_IS_INFLATED 1
#else
#define FOGLINE_MEMORY_IS_INFLATED 0
#endif

namespace fogline {
namespace {

using test::TempFolder;
using test::TiffSpec;

/// A line of /proc/self/status in bytes; 0 where there is none.
std::int64_t status_bytes(const std::string& name) {
  std::ifstream status("/proc/self/status");
  std::string word;
  while (status >> word) {
    if (word == name + ":") {
      std::int64_t kilobytes = 0;
      status >> kilobytes;
      return kilobytes * 1024;
    }
  }
  return 0;
}

/// Bytes by which the resident peak rises over what was there before, while the file is surveyed.
std::int64_t peak_of_survey(const std::string& path) {
  std::ofstream("/proc/self/clear_refs") << "5";
  const std::int64_t before = status_bytes("VmRSS");
  open_scan(path, {})->survey({100'000}, {});
  return status_bytes("VmHWM") - before;
}

/// 72 MB of noise that no codec makes smaller.
TiffSpec large_spec() {
  TiffSpec spec;
  spec.width = 4000;
  spec.height = 3000;
  spec.rows_per_strip = spec.height;
  spec.code = [](int x, int y, int c) {
    std::uint32_t mixed = static_cast<std::uint32_t>(x * 3 + c) * 2654435761U +
                          static_cast<std::uint32_t>(y) * 2246822519U;
    mixed ^= mixed >> 15U;
    return static_cast<std::uint16_t>((mixed * 3266489917U) >> 16U);
  };
  return spec;
}

constexpr std::int64_t allowed_bytes = 24 << 20;

class Memory : public testing::TestWithParam<int> {};

TEST_P(Memory, HugeSingleStripsAndTilesAreNotHeld) {
  if (FOGLINE_MEMORY_IS_INFLATED == 1 || status_bytes("VmHWM") == 0) {
    GTEST_SKIP() << "resident memory can't be told here";
  }
  const TempFolder folder;
  const std::string path = folder.file("scan.tif");
  TiffSpec spec = large_spec();
  spec.compression = GetParam();
  if (spec.compression == COMPRESSION_ADOBE_DEFLATE) {
    spec.more_tags = [](TIFF* tiff) { TIFFSetField(tiff, TIFFTAG_ZIPQUALITY, 1); };
  }
  for (const bool separate : {false, true}) {
    // Apart, each plane is one strip of 24 MB that could be held whole: only together it can't.
    spec.separate = separate;
    test::write_tiff(path, spec);
    const std::int64_t peak = peak_of_survey(path);
    EXPECT_LT(peak, separate ? 3 * allowed_bytes : allowed_bytes) << (separate ? "apart" : "one");
  }
  spec.separate = false;
  // One tile of 4000 x 3008, of which 3000 rows are picture.
  spec.tile = 4000;
  test::write_tiff(path, spec);
  EXPECT_LT(peak_of_survey(path), allowed_bytes) << "tile";
}

INSTANTIATE_TEST_SUITE_P(Codecs, Memory,
                         testing::Values(COMPRESSION_NONE, COMPRESSION_PACKBITS,
                                         COMPRESSION_ADOBE_DEFLATE));

/// The row-by-row way over huge units gives the same light as the whole-unit way over small ones.
TEST(HugeUnits, EqualTheirTwinsInSmallOnes) {
  const TempFolder folder;
  TiffSpec spec;
  // 42 MB: just more than is ever held as one unit.
  spec.width = 3200;
  spec.height = 2200;
  spec.compression = COMPRESSION_LZW;
  spec.predictor = 2;
  spec.code = [](int x, int y, int c) { return static_cast<std::uint16_t>(x / 16 * 201 + y + c); };
  spec.rows_per_strip = 64;
  test::write_tiff(folder.file("small.tif"), spec);
  const auto small = open_scan(folder.file("small.tif"), {});
  const ScanGrid wanted = small->survey({50'000}, {});
  const RegionPx region{1234, 1999, 321, 45};
  const auto wanted_region = test::exact_light(folder.file("small.tif"), {}, region, 2);
  spec.rows_per_strip = spec.height;
  for (const int tile : {0, 2656}) {
    for (const std::string mode : {"wl", "wb", "w8"}) {
      spec.tile = tile;
      spec.mode = mode;
      test::write_tiff(folder.file("huge.tif"), spec);
      const auto huge = open_scan(folder.file("huge.tif"), {});
      EXPECT_EQ(test::exact_light(folder.file("huge.tif"), {}, region, 2).samples(),
                wanted_region.samples());
      const ScanGrid grid = huge->survey({50'000}, {});
      EXPECT_EQ(grid.light.root_codes().samples(), wanted.light.root_codes().samples());
    }
  }
}

}  // namespace
}  // namespace fogline
