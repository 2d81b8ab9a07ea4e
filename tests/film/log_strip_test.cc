#include "film/strips/log_strip.h"

#include <cmath>
#include <limits>

#include <gtest/gtest.h>

namespace fogline {
namespace {

StraightStrip strip_of(const std::vector<float>& samples, int channels) {
  StraightStrip strip;
  strip.light = Raster<float>(static_cast<int>(samples.size()) / channels, 1, channels);
  strip.light.samples() = samples;
  return strip;
}

// D = -log10 T (ISO 5-1).
TEST(LogStrip, IsDensityAboveTheReference) {
  const cv::Mat1f log_light = log_light_of(strip_of({0.8F, 0.08F, 0.4F, 1.6F}, 1), 0.8);
  EXPECT_NEAR(log_light(0, 0), 0.0F, 1e-6F);
  EXPECT_NEAR(log_light(0, 1), 1.0F, 1e-6F);
  EXPECT_NEAR(log_light(0, 2), 0.30103F, 1e-5F);
  EXPECT_NEAR(log_light(0, 3), -0.30103F, 1e-5F);
}

// Twice the light and twice the reference tell the same film.
TEST(LogStrip, TheLampCancels) {
  const cv::Mat1f dim = log_light_of(strip_of({0.4F, 0.03F, 0.0F}, 1), 0.4);
  const cv::Mat1f bright = log_light_of(strip_of({0.8F, 0.06F, 0.0F}, 1), 0.8);
  for (int x = 0; x < 3; ++x) {
    EXPECT_NEAR(dim(0, x), bright(0, x), 1e-6F);
  }
}

TEST(LogStrip, NoLightIsHeldAndUnknownStaysUnknown) {
  const float unknown = std::numeric_limits<float>::quiet_NaN();
  const cv::Mat1f log_light = log_light_of(strip_of({0.0F, 1e-7F, unknown}, 1), 1.0);
  EXPECT_FLOAT_EQ(log_light(0, 0), 4.0F);
  EXPECT_FLOAT_EQ(log_light(0, 1), 4.0F);
  EXPECT_TRUE(std::isnan(log_light(0, 2)));
}

// Luminance of IEC 61966-2-1: 0.2126, 0.7152 and 0.0722 of red, green and blue.
TEST(LogStrip, WeighsColoursAsTheEyeDoes) {
  const cv::Mat1f log_light = log_light_of(
      strip_of({1.0F, 0.0F, 0.0F, 0.0F, 1.0F, 0.0F, 0.0F, 0.0F, 1.0F, 1.0F, 1.0F, 1.0F}, 3), 1.0);
  ASSERT_EQ(log_light.cols, 4);
  EXPECT_NEAR(log_light(0, 0), -std::log10(0.2126), 1e-5);
  EXPECT_NEAR(log_light(0, 1), -std::log10(0.7152), 1e-5);
  EXPECT_NEAR(log_light(0, 2), -std::log10(0.0722), 1e-5);
  EXPECT_NEAR(log_light(0, 3), 0.0, 1e-5);
}

}  // namespace
}  // namespace fogline
