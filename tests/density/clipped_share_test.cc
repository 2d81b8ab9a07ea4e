#include "density/clipped_share.h"

#include <gtest/gtest.h>

namespace fogline {
namespace {

/// Even light that varies a little, 40 x 40 grid pixels of 2 x 2 stored ones, 10 stored a mm.
ScanGrid even_grid(int channels) {
  ScanGrid grid;
  grid.reduction = 2;
  grid.light = LightRaster(40, 40, channels);
  grid.clipped = Raster<std::uint8_t>(40, 40);
  for (int y = 0; y < 40; ++y) {
    for (int x = 0; x < 40; ++x) {
      for (int c = 0; c < channels; ++c) {
        grid.light.set_light(x, y, c, 0.5F + 0.001F * static_cast<float>((3 * x + 7 * y) % 11));
      }
    }
  }
  return grid;
}

const FilmMap& ten_a_mm() {
  static const FilmMap map = FilmMap::straight({0.0, 0.0}, 0.0, 10.0);
  return map;
}

constexpr FilmExtent middle{2.0, 6.0, 2.0, 6.0};  // grid pixels 10 to 30 each way

TEST(ClippedShare, IsNothingWhereNoCodeIsAtTheTop) {
  const ScanGrid grid = even_grid(3);
  for (const double share : ClippedShare(grid).of(ten_a_mm(), middle)) {
    EXPECT_EQ(share, 0.0);
  }
}

// Bits of green only: half of the area mostly clipped, the other half in part, which counts a
// quarter.
TEST(ClippedShare, CountsWholeAndPartPerChannel) {
  ScanGrid grid = even_grid(3);
  for (int y = 0; y < 40; ++y) {
    for (int x = 0; x < 40; ++x) {
      grid.clipped.at(x, y) = x < 20 ? 0x22 : 0x02;
    }
  }
  const PerChannel<double> share = ClippedShare(grid).of(ten_a_mm(), middle);
  EXPECT_EQ(share[0], 0.0);
  EXPECT_NEAR(share[1], 0.5 + 0.5 * 0.25, 0.03);
  EXPECT_EQ(share[2], 0.0);
}

// A scanner that stops at 90 % of full scale clips there all the same.
TEST(ClippedShare, KnowsAScannerThatStopsShortOfFullScale) {
  ScanGrid grid = even_grid(1);
  for (int y = 12; y < 40; ++y) {
    for (int x = 0; x < 40; ++x) {
      grid.light.set_light(x, y, 0, 0.9F);
    }
  }
  EXPECT_EQ(ClippedShare(grid).of(ten_a_mm(), middle)[0], 1.0);
  // A tenth of the area at the highest light is no clipping.
  EXPECT_EQ(ClippedShare(grid).of(ten_a_mm(), {2.0, 6.0, 0.4, 2.6})[0], 0.0);
}

TEST(ClippedShare, OutsideTheScanIsNothing) {
  ScanGrid grid = even_grid(1);
  EXPECT_EQ(ClippedShare(grid).of(ten_a_mm(), {20.0, 24.0, 2.0, 6.0})[0], 0.0);
}

}  // namespace
}  // namespace fogline
