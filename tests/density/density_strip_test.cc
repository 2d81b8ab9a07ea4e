#include "density/density_strip.h"

#include <cmath>

#include <gtest/gtest.h>

namespace fogline {
namespace {

constexpr double pixels_per_mm = 10.0;

/// A scan of 400 x 200 pixels of even light in which nothing is opaque.
ScanGrid even_scan(float light, int channels) {
  ScanGrid grid;
  grid.light = LightRaster(400, 200, channels);
  grid.clipped = Raster<std::uint8_t>(400, 200);
  for (int y = 0; y < 200; ++y) {
    for (int x = 0; x < 400; ++x) {
      for (int c = 0; c < channels; ++c) {
        grid.light.set_light(x, y, c, light);
      }
    }
  }
  return grid;
}

Lamp even_lamp(const PerChannel<double>& light, int channels) {
  LightSample sample;
  sample.light = light;
  return Lamp::fitted({sample}, channels);
}

struct Setting {
  ScanGrid grid;
  FilmMap map = FilmMap::straight({0.0, 100.0}, 0.0, pixels_per_mm);
  StraightStrip strip;
  StrayLight stray;
};

Setting setting_of(float light, int channels) {
  Setting setting;
  setting.grid = even_scan(light, channels);
  setting.strip = straighten(setting.grid, setting.map, {-2.0, 38.0, -9.0, 9.0}, 10.0);
  setting.stray = StrayLight::estimated(setting.grid, {}, pixels_per_mm);
  return setting;
}

// Stray light leaves the film's light and the lamp's alike: D = -log10((light - stray) / lamp).
TEST(DensityStrip, TakesStrayLightFromTheFilm) {
  Setting setting = setting_of(0.6F, 3);
  for (int x = setting.strip.column(10.0); x <= setting.strip.column(20.0); ++x) {
    for (int y = 0; y < setting.strip.light.height(); ++y) {
      setting.strip.light.at(x, y, 0) = 0.06F;
      setting.strip.light.at(x, y, 1) = 0.05F;
      setting.strip.light.at(x, y, 2) = 0.04F;
    }
  }
  const PerChannel<double> lamp{0.5, 0.6, 0.7};
  const DensityStrip density =
      density_of(setting.strip, setting.map, setting.stray, even_lamp(lamp, 3));
  const int x = density.column(15.0);
  const int y = density.row(0.0);
  const auto stray = static_cast<double>(setting.stray.at(150.0, 100.0, 0));
  ASSERT_GT(stray, 0.001);
  PerChannel<double> transmittance{};
  for (int c = 0; c < 3; ++c) {
    const auto i = static_cast<std::size_t>(c);
    transmittance[i] = (0.06 - 0.01 * c - stray) / lamp[i];
    EXPECT_NEAR(density.channels.at(x, y, c), -std::log10(transmittance[i]), 1e-5);
  }
  // Visual density is that of visual transmittance, not a mean of densities.
  EXPECT_NEAR(density.visual.at(x, y), -std::log10(visual_from_channels(transmittance, 3)), 1e-5);
}

TEST(DensityStrip, IsUnknownOutsideTheScanAndInfiniteInTheDark) {
  Setting setting = setting_of(0.6F, 1);
  setting.strip.light.at(setting.strip.column(15.0), setting.strip.row(0.0)) = 0.0F;
  const DensityStrip density =
      density_of(setting.strip, setting.map, setting.stray, even_lamp({0.6, 0.0, 0.0}, 1));
  EXPECT_TRUE(std::isnan(density.visual.at(density.column(-1.0), density.row(0.0))));
  EXPECT_TRUE(std::isnan(density.channels.at(density.column(-1.0), density.row(0.0))));
  EXPECT_TRUE(std::isinf(density.visual.at(density.column(15.0), density.row(0.0))));
  EXPECT_GT(density.visual.at(density.column(15.0), density.row(0.0)), 0.0F);
  EXPECT_TRUE(std::isfinite(density.visual.at(density.column(16.0), density.row(0.0))));
}

TEST(DensityStrip, KnowsItsPlaces) {
  const Setting setting = setting_of(0.6F, 1);
  const DensityStrip density =
      density_of(setting.strip, setting.map, setting.stray, even_lamp({0.6, 0.0, 0.0}, 1));
  for (const int x : {0, 17, 399}) {
    EXPECT_EQ(density.column(density.along_mm(x)), x);
  }
  for (const int y : {0, 17, 179}) {
    EXPECT_EQ(density.row(density.across_mm(y)), y);
  }
  EXPECT_EQ(density.column(-50.0), 0);
  EXPECT_EQ(density.column(500.0), density.visual.width() - 1);
}

TEST(SubtractStray, LeavesTheLampWithoutIt) {
  const Setting setting = setting_of(0.6F, 1);
  LightSample sample;
  sample.film = {15.0, 0.0};
  sample.light = {0.6, 0.0, 0.0};
  std::vector<LightSample> samples{sample};
  subtract_stray(samples, setting.map, setting.stray, 1);
  EXPECT_NEAR(samples[0].light[0], 0.6 - static_cast<double>(setting.stray.at(150.0, 100.0, 0)),
              1e-9);
}

}  // namespace
}  // namespace fogline
