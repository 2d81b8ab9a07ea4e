#include "words/figure_words.h"

#include "record/invented_judgement.h"
#include "record/invented_roll.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

namespace fogline {
namespace {

using testing::EndsWith;
using testing::HasSubstr;
using testing::Not;
using testing::StartsWith;

TEST(FigureWords, CountWhatIsOutlined) {
  ScanMeasurement scan = invented::scan("strip.tif");
  EXPECT_THAT(strip_name(scan),
              AllOf(StartsWith("strip.tif, "), HasSubstr("3 frames and 0 marks")));
  scan.frames.resize(1);
  scan.marks.resize(1);
  EXPECT_THAT(strip_name(scan), HasSubstr("1 frame and 1 mark outlined"));
  EXPECT_THAT(strip_caption("strip.tif", true), HasSubstr("nothing was found"));
  EXPECT_THAT(strip_caption("strip.tif", false), EndsWith("these lines:"));
}

TEST(WishedTones, GrowWithTheAim) {
  Aim aim;
  const WishedTones usual = wished_tones(aim);
  aim.contrast_index *= 0.5;
  const WishedTones half = wished_tones(aim);
  EXPECT_LT(usual.shadow_from, usual.shadow_to);
  EXPECT_LT(usual.shadow_to, usual.highlight_from);
  EXPECT_LT(usual.highlight_from, usual.highlight_to);
  EXPECT_NEAR(half.shadow_from, 0.5 * usual.shadow_from, 1e-12);
  EXPECT_NEAR(half.highlight_to, 0.5 * usual.highlight_to, 1e-12);
}

TEST(ScaleCaption, SaysUnitsZeroAndWhatIsWished) {
  ScanMeasurement scan = invented::scan("strip.tif");
  const Aim aim;
  const std::string plain = scale_caption(scan, aim, DensityUnits::density, false);
  EXPECT_THAT(plain, HasSubstr("above: density above the bare light; below: the same in stops."));
  EXPECT_THAT(plain, Not(HasSubstr("dashed")));
  scan.densities_above = DensitiesAbove::base;
  const std::string wished = scale_caption(scan, aim, DensityUnits::stops, true);
  EXPECT_THAT(wished, HasSubstr("stops of light held back above clear film; below: density."));
  EXPECT_THAT(wished, HasSubstr("shadow (0.20 to 0.40) and highlight (1.05 to 1.35)"));
  EXPECT_THAT(wished, HasSubstr("contrast index of 0.58"));
}

TEST(CurveCaption, SaysFromWhereLogExposureCounts) {
  Sensitometry read;
  const Aim aim;
  EXPECT_THAT(curve_caption(read, aim, false), HasSubstr("minus the wedge's density"));
  read.scale.metered_log_h = 0.0;
  EXPECT_THAT(curve_caption(read, aim, false), HasSubstr("from the metered one"));
  read.scale.absolute = true;
  EXPECT_THAT(curve_caption(read, aim, false), HasSubstr("in lux seconds"));
  EXPECT_THAT(curve_caption(read, aim, false), Not(HasSubstr("dashed")));
  EXPECT_THAT(curve_caption(read, aim, true), EndsWith("dashed: the same film developed to 0.58."));
}

TEST(NumberSentences, KeepTheNumberApart) {
  const NumberSentence contrast = contrast_words_of(invented::density(0.42, 0.08), Aim{});
  EXPECT_EQ(contrast.number, "0.42 ± 0.08");
  EXPECT_THAT(contrast.after, HasSubstr("is 0.58, and nothing within 0.05"));
  const NumberSentence light = light_words_of(invented::density(-1.6, 0.6));
  EXPECT_EQ(light.before + light.number + light.after,
            "Light −1.6 ± 0.6 stops from the usual placement; more is plus.");
  EXPECT_EQ(base_fog_words(invented::density(0.284, 0.031), DensityUnits::density),
            "base plus fog 0.28 ± 0.03");
  EXPECT_EQ(contrast_index_words(invented::density(0.6, 0.04)), "contrast index 0.60 ± 0.04");
}

TEST(ResponseCaption, NamesChannelsWhereThereAreSeveral) {
  ScannerCalibration calibration;
  EXPECT_THAT(response_caption(calibration), HasSubstr("red, green and blue"));
  calibration.channels = 1;
  EXPECT_THAT(response_caption(calibration), Not(HasSubstr("red")));
}

}  // namespace
}  // namespace fogline
