// Real pictures that nobody simulated, where they are at hand beside the project.
#include "measure_file.h"

#include <cmath>
#include <filesystem>

#include <gtest/gtest.h>

namespace end_to_end {
namespace {

std::string real_file(const char* name) {
  return std::string(FOGLINE_SHARED_DIR) + "/real/" + name;
}

// A phone picture of a 135 negative on a light panel, 54 pixels a millimetre. Places by eye.
TEST(PhonePicture, FilmAndFramesAreFound) {
  const std::string path = real_file("negative-135-phone.jpg");
  if (!std::filesystem::exists(path)) {
    GTEST_SKIP() << "no real scans beside the project";
  }
  const fogline::RollMeasurement roll = measure_file(path);
  const fogline::ScanMeasurement& scan = roll.scans.front();
  ASSERT_EQ(scan.strips.size(), 1U);
  EXPECT_EQ(scan.strips[0].format, fogline::FilmFormat::f135);
  EXPECT_LT(std::abs(scan.strips[0].rotation_deg), 3.0);
  EXPECT_GE(scan.strips[0].perforations, 16);
  const auto covered = std::count_if(
      scan.outlines.begin(), scan.outlines.end(), [](const fogline::Outline& outline) {
        return outline.kind == fogline::OutlineKind::perforation && outline.partial;
      });
  EXPECT_GE(covered, 8);

  ASSERT_EQ(scan.frames.size(), 3U);
  EXPECT_TRUE(scan.frames[0].cut);
  EXPECT_FALSE(scan.frames[1].cut);
  EXPECT_TRUE(scan.frames[2].cut);
  const fogline::BoxPx& whole = scan.frames[1].box_px;
  constexpr double slack_px = 0.4 * 54.0;  // 0.4 mm, as far as the eye can place a border
  EXPECT_NEAR(whole.x, 930.0, slack_px);
  EXPECT_NEAR(whole.y, 221.0, slack_px);
  EXPECT_NEAR(whole.x + whole.width, 2248.0, slack_px);
  EXPECT_NEAR(whole.y + whole.height, 2203.0, slack_px);

  EXPECT_EQ(scan.fitness, fogline::Fitness::indicative);
  ASSERT_TRUE(scan.base_fog.has_value());
  const fogline::Quantity& base = scan.base_fog->visual;
  // About 0.1 on an sRGB reading; such films usually have 0.2 to 0.35.
  EXPECT_NEAR(base.value, 0.10, 0.03);
  EXPECT_LE(base.lower95.value_or(base.value - base.u95), 0.10);
  EXPECT_GE(base.upper95.value_or(base.value + base.u95), 0.30);
}

// Six strips of evenly exposed film that isn't silver: nothing to find, nothing to judge.
TEST(StepStrips, NothingIsInvented) {
  const std::string path = real_file("step-strips-flatbed.tif");
  if (!std::filesystem::exists(path)) {
    GTEST_SKIP() << "no real scans beside the project";
  }
  const fogline::RollMeasurement roll = measure_file(path);
  const fogline::ScanMeasurement& scan = roll.scans.front();
  EXPECT_TRUE(scan.frames.empty());
  for (const fogline::StripMeasurement& strip : scan.strips) {
    EXPECT_EQ(strip.perforations, 0);
    EXPECT_EQ(strip.format, fogline::FilmFormat::unknown);
  }
  EXPECT_EQ(scan.fitness, fogline::Fitness::unfit);
  EXPECT_TRUE(has_caution(scan, "no-negative"));
  EXPECT_EQ(roll.contrast.method, fogline::ContrastMethod::none);
  EXPECT_FALSE(roll.contrast.contrast_index.has_value());
}

}  // namespace
}  // namespace end_to_end
