#include "film/straight_strip.h"

#include <cmath>

#include <gtest/gtest.h>

namespace fogline {
namespace {

ScanGrid empty_grid(int width, int height, int channels = 1) {
  ScanGrid grid;
  grid.light = LightRaster(width, height, channels);
  grid.clipped = Raster<std::uint8_t>(width, height);
  return grid;
}

// A chequerboard of 4 % and 64 % of light at half the strip's pixel: the mean of light is 34 %, a
// mean of densities would be 16 %.
TEST(Straighten, AveragesLinearLight) {
  ScanGrid grid = empty_grid(200, 200);
  for (int y = 0; y < 200; ++y) {
    for (int x = 0; x < 200; ++x) {
      grid.light.set_light(x, y, 0, (x + y) % 2 == 0 ? 0.04F : 0.64F);
    }
  }
  const StraightStrip strip =
      straighten(grid, FilmMap::straight({0.0, 100.0}, 0.0, 20.0), {1.0, 9.0, -4.0, 4.0}, 10.0);
  ASSERT_EQ(strip.light.width(), 80);
  ASSERT_EQ(strip.light.height(), 80);
  for (const float light : strip.light.samples()) {
    EXPECT_NEAR(light, 0.34F, 1e-4F);
  }
}

// Light that grows evenly to the right and down is met at every place of a strip that lies askew.
TEST(Straighten, FindsKnownLightOnATurnedStrip) {
  ScanGrid grid = empty_grid(300, 240, 3);
  const auto light_at = [](double x, double y, int c) {
    return 0.1 + 0.0015 * x + 0.001 * y + 0.05 * c;
  };
  for (int y = 0; y < 240; ++y) {
    for (int x = 0; x < 300; ++x) {
      for (int c = 0; c < 3; ++c) {
        grid.light.set_light(x, y, c, static_cast<float>(light_at(x + 0.5, y + 0.5, c)));
      }
    }
  }
  const FilmMap map = FilmMap::straight({150.0, 120.0}, 30.0, 12.0);
  const StraightStrip strip = straighten(grid, map, {-6.0, 6.0, -4.0, 4.0}, 10.0);
  for (int y = 0; y < strip.light.height(); ++y) {
    for (int x = 0; x < strip.light.width(); ++x) {
      const PointPx at = map.scan_from_film({strip.along_mm(x), strip.across_mm(y)});
      for (int c = 0; c < 3; ++c) {
        EXPECT_NEAR(strip.light.at(x, y, c), light_at(at.x, at.y, c), 1e-4);
      }
    }
  }
}

// A wrong scale makes any film huge: it is then laid coarser, and places stay where they are.
TEST(Straighten, HugeFilmIsLaidCoarser) {
  ScanGrid grid = empty_grid(400, 300);
  grid.light.set_light(200, 150, 0, 1.0F);
  const FilmMap map = FilmMap::straight({0.0, 0.0}, 0.0, 0.1);
  const StraightStrip strip = straighten(grid, map, {0.0, 4000.0, 0.0, 3000.0}, 10.0);
  EXPECT_LE(static_cast<double>(strip.light.width()) * strip.light.height(), 4.1e6);
  EXPECT_LT(strip.pixels_per_mm, 1.0);
  EXPECT_GT(strip.light.at(strip.column(2005.0), strip.row(1505.0)), 0.5F);
  EXPECT_LT(strip.light.at(strip.column(1505.0), strip.row(1505.0)), 0.01F);
}

// Places are the same whether the grid was reduced or not.
TEST(Straighten, KnowsTheGridsReduction) {
  ScanGrid grid = empty_grid(60, 60);
  grid.reduction = 4;
  grid.light.set_light(30, 20, 0, 1.0F);  // stored pixels 120 to 124, 80 to 84
  const FilmMap map = FilmMap::straight({0.0, 0.0}, 0.0, 40.0);
  const StraightStrip strip = straighten(grid, map, {0.0, 6.0, 0.0, 6.0}, 10.0);
  EXPECT_NEAR(strip.light.at(strip.column(3.05), strip.row(2.05)), 1.0F, 1e-4F);
  EXPECT_NEAR(strip.light.at(strip.column(2.85), strip.row(2.05)), 0.0F, 1e-4F);
}

TEST(Straighten, IsUnknownOutsideTheScan) {
  ScanGrid grid = empty_grid(100, 100);
  const StraightStrip strip =
      straighten(grid, FilmMap::straight({0.0, 50.0}, 0.0, 10.0), {-2.0, 12.0, -7.0, 7.0}, 10.0);
  EXPECT_TRUE(std::isnan(strip.light.at(strip.column(-0.5), strip.row(0.0))));
  EXPECT_TRUE(std::isnan(strip.light.at(strip.column(10.5), strip.row(0.0))));
  EXPECT_TRUE(std::isnan(strip.light.at(strip.column(5.0), strip.row(-5.5))));
  EXPECT_TRUE(std::isnan(strip.light.at(strip.column(5.0), strip.row(5.5))));
  EXPECT_FALSE(std::isnan(strip.light.at(strip.column(0.55), strip.row(-4.45))));
  EXPECT_FALSE(std::isnan(strip.light.at(strip.column(9.45), strip.row(4.45))));
}

TEST(Straighten, JoinsClipBits) {
  ScanGrid grid = empty_grid(40, 40);
  grid.clipped.at(20, 20) = 0x11;
  grid.clipped.at(21, 20) = 0x20;
  const StraightStrip strip =
      straighten(grid, FilmMap::straight({0.0, 0.0}, 0.0, 20.0), {0.0, 2.0, 0.0, 2.0}, 10.0);
  EXPECT_EQ(strip.clipped.at(10, 10), 0x31);
  EXPECT_EQ(strip.clipped.at(9, 10), 0);
}

TEST(MaskOutside, HidesWhatLiesOutsideAWindow) {
  ScanGrid grid = empty_grid(200, 200);
  const FilmMap map = FilmMap::straight({0.0, 100.0}, 0.0, 10.0);
  StraightStrip strip = straighten(grid, map, {0.0, 20.0, -10.0, 10.0}, 10.0);
  mask_outside(strip, map, {}, 0.5);
  EXPECT_FALSE(std::isnan(strip.light.at(strip.column(0.5), strip.row(-9.5))));
  mask_outside(strip, map, {{50.0, 50.0}, {150.0, 50.0}, {150.0, 150.0}, {50.0, 150.0}}, 0.5);
  EXPECT_TRUE(std::isnan(strip.light.at(strip.column(5.35), strip.row(0.0))));
  EXPECT_FALSE(std::isnan(strip.light.at(strip.column(5.65), strip.row(0.0))));
  EXPECT_TRUE(std::isnan(strip.light.at(strip.column(10.0), strip.row(4.65))));
  EXPECT_FALSE(std::isnan(strip.light.at(strip.column(10.0), strip.row(4.35))));
}

}  // namespace
}  // namespace fogline
