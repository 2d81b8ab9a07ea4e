#include "film/strips/finding_image.h"

#include "film/drawn_scan.h"

#include <cmath>

#include <gtest/gtest.h>

namespace fogline {
namespace {

constexpr std::int64_t plenty = 1'000'000;

/// Bare light on the left half, the given share of it on the right.
Raster<float> two_halves(int width, int height, float bare, float share) {
  Raster<float> light(width, height, 1, bare);
  for (int y = 0; y < height; ++y) {
    for (int x = width / 2; x < width; ++x) {
      light.at(x, y) = bare * share;
    }
  }
  return light;
}

// Light is kept in 16 bits: a few parts in ten thousand.
constexpr float code_slack = 0.001F;

TEST(FindingImage, ReadsAsDensityAboveTheBrightest) {
  for (const float bare : {0.05F, 0.4F, 0.9F}) {
    const FindingImage image =
        finding_image(drawn::grid_of(two_halves(64, 32, bare, 0.1F)), plenty, FindingLight::visual);
    ASSERT_EQ(image.log_light.cols, 64);
    ASSERT_EQ(image.log_light.rows, 32);
    EXPECT_EQ(image.scan_px, 1.0);
    EXPECT_NEAR(image.log_light(5, 5), 0.0F, code_slack);
    EXPECT_NEAR(image.log_light(5, 50), 1.0F, 2.0F * code_slack);
  }
}

// A chequerboard of 4 % and 64 % is 34 % of light; a mean of densities would be 16 %.
TEST(FindingImage, AveragesLinearLight) {
  Raster<float> light(60, 60, 1, 0.68F);
  for (int y = 0; y < 60; ++y) {
    for (int x = 30; x < 60; ++x) {
      light.at(x, y) = (x + y) % 2 == 0 ? 0.04F : 0.64F;
    }
  }
  const FindingImage image = finding_image(drawn::grid_of(light), 900, FindingLight::visual);
  ASSERT_EQ(image.log_light.cols, 30);
  EXPECT_EQ(image.scan_px, 2.0);
  EXPECT_NEAR(image.log_light(10, 25), std::log10(0.68F / 0.34F), code_slack);
}

// A pixel of it says how many stored pixels it stands for, those of a reduced grid included.
TEST(FindingImage, CountsStoredPixels) {
  ScanGrid grid = drawn::grid_of(Raster<float>(90, 60, 1, 0.5F));
  grid.reduction = 3;
  const FindingImage image = finding_image(grid, 600, FindingLight::visual);
  EXPECT_EQ(image.scan_px, 9.0);
  EXPECT_EQ(image.log_light.cols, 30);
  EXPECT_EQ(image.log_light.rows, 20);
}

TEST(FindingImage, HasAtMostThePixelsAskedFor) {
  for (const std::int64_t most : {100, 999, 5000, 20000}) {
    const FindingImage image =
        finding_image(drawn::grid_of(Raster<float>(200, 100, 1, 0.5F)), most, FindingLight::visual);
    EXPECT_LE(static_cast<std::int64_t>(image.log_light.total()), most);
    EXPECT_GT(4 * static_cast<std::int64_t>(image.log_light.total()), most / 2);
  }
}

// Overshoot of sharpening along few pixels isn't the lamp; what is darker than any film is held.
TEST(FindingImage, HoldsWhatCantBeFilm) {
  Raster<float> light = two_halves(200, 100, 0.1F, 0.0F);
  light.at(3, 3) = 1.0F;
  const FindingImage image = finding_image(drawn::grid_of(light), plenty, FindingLight::visual);
  EXPECT_NEAR(image.log_light(50, 50), 0.0F, code_slack);
  EXPECT_FLOAT_EQ(image.log_light(3, 3), -0.3F);
  EXPECT_FLOAT_EQ(image.log_light(50, 150), 4.0F);
}

// Visual light: luminance of IEC 61966-2-1, where green counts 0.7152.
TEST(FindingImage, SeesColoursByTheirLuminance) {
  ScanGrid grid = drawn::grid_of(Raster<float>(40, 20, 1, 0.5F), 3);
  for (int y = 0; y < 20; ++y) {
    for (int x = 20; x < 40; ++x) {
      grid.light.set_light(x, y, 1, 0.0F);
    }
  }
  const FindingImage image = finding_image(grid, plenty, FindingLight::visual);
  EXPECT_NEAR(image.log_light(10, 30), -std::log10(1.0 - 0.7152), 0.002);
}

// Turned over, the brightest and the darkest change places.
TEST(FindingImage, TurnedOverBrightIsDark) {
  const ScanGrid grid = drawn::grid_of(two_halves(64, 32, 0.8F, 0.05F));
  const FindingImage plain = finding_image(grid, plenty, FindingLight::visual);
  const FindingImage over = finding_image(grid, plenty, FindingLight::turned_over);
  EXPECT_LT(plain.log_light(5, 5), plain.log_light(5, 50));
  EXPECT_GT(over.log_light(5, 5), over.log_light(5, 50));
  EXPECT_NEAR(over.log_light(5, 50), 0.0F, code_slack);
}

TEST(FindingImage, StandsNoLightAtAll) {
  const FindingImage image =
      finding_image(drawn::grid_of(Raster<float>(3, 2, 1, 0.0F)), plenty, FindingLight::visual);
  for (int y = 0; y < 2; ++y) {
    for (int x = 0; x < 3; ++x) {
      EXPECT_FALSE(std::isnan(image.log_light(y, x)));
    }
  }
}

}  // namespace
}  // namespace fogline
