#include "density/blank.h"

#include <cmath>

#include <gtest/gtest.h>

namespace fogline {
namespace {

/// A grey lamp that falls by a third from left to right, seen through a transmittance.
ScanGrid lit_grid(int width, int height, double transmittance) {
  ScanGrid grid;
  grid.light = LightRaster(width, height, 1);
  grid.clipped = Raster<std::uint8_t>(width, height);
  for (int y = 0; y < height; ++y) {
    for (int x = 0; x < width; ++x) {
      const double lamp = 0.9 * (1.0 - (x + 0.5) / width / 3.0);
      grid.light.set_light(x, y, 0, static_cast<float>(lamp * transmittance));
    }
  }
  return grid;
}

TEST(Blank, TakesTheLampsCourseOut) {
  ScanGrid film = lit_grid(90, 30, 0.25);
  const BlankLight light = divide_by_blank(film, lit_grid(30, 10, 1.0));
  for (const int x : {3, 45, 86}) {
    const double density =
        std::log10(light.level[0] / static_cast<double>(film.light.light(x, 15, 0)));
    EXPECT_NEAR(density, -std::log10(0.25), 0.004) << x;
  }
  EXPECT_EQ(light.clipped_share, 0.0);
}

TEST(Blank, TellsHowMuchOfItIsClipped) {
  ScanGrid film = lit_grid(40, 10, 0.5);
  ScanGrid blank = lit_grid(40, 10, 1.0);
  for (int x = 0; x < 20; ++x) {
    for (int y = 0; y < 10; ++y) {
      blank.clipped.at(x, y) = 0x11;
    }
  }
  EXPECT_NEAR(divide_by_blank(film, blank).clipped_share, 0.5, 1e-9);
}

}  // namespace
}  // namespace fogline
