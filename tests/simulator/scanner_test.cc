#include "simulator/scanner.h"

#include <cmath>
#include <numeric>

#include <gtest/gtest.h>

namespace filmsim {
namespace {

// Veiling glare of a small dense spot in a wide bright field: D' = -log10((10^-D + f) / (1 + f)).
// The table follows from that formula; a share a of spread light is f = a / (1 - a).
TEST(Glare, SmallSpotsReadAsTheFormulaSays) {
  struct Row {
    double f, density, seen;
  };
  for (const Row& row : {Row{0.005, 1.0, 0.981}, Row{0.005, 1.5, 1.438}, Row{0.005, 2.0, 1.826},
                         Row{0.005, 3.0, 2.224}, Row{0.001, 2.0, 1.959}, Row{0.001, 3.0, 2.699},
                         Row{0.02, 1.0, 0.929}, Row{0.02, 2.0, 1.531}}) {
    constexpr double kPixelsPerMm = 4.0;
    Plane light(600, 600, 1.0F);
    for (int y = 298; y < 302; ++y) {
      for (int x = 298; x < 302; ++x) {
        light.at(x, y) = static_cast<float>(std::pow(10.0, -row.density));
      }
    }
    GlareSettings glare;
    glare.share = row.f / (1.0 + row.f);
    glare.narrow_part = 0.0;
    add_glare(light, glare, kPixelsPerMm);
    EXPECT_NEAR(-std::log10(light.at(300, 300)), row.seen, 0.0015);
  }
}

TEST(Glare, LeavesAnEvenFieldAlone) {
  Plane light(90, 70, 0.37F);
  add_glare(light, {0.03, 2.0, 25.0, 0.5, true, 3.0}, 6.0);
  for (const float value : light.values) EXPECT_NEAR(value, 0.37F, 1e-5F);
}

TEST(Glare, IsWiderAlongTheSensorLine) {
  Plane light(240, 240, 0.0F);
  for (int y = 116; y < 124; ++y) std::fill_n(light.row(y) + 116, 8, 1.0F);
  add_glare(light, {0.03, 4.0, 8.0, 0.5, true, 4.0}, 4.0);
  EXPECT_GT(light.at(200, 120), 3.0F * light.at(120, 200));
}

TEST(Callier, IsOneForNothingAndItsFactorForMuch) {
  EXPECT_FLOAT_EQ(seen_density(0.0F, 1.3), 0.0F);
  EXPECT_NEAR(seen_density(2.0F, 1.3) / 2.0F, 1.3F, 0.001F);
  EXPECT_NEAR(seen_density(0.3F, 1.3) / 0.3F, 1.0F + 0.3F * (1.0F - std::exp(-1.0F)), 1e-4F);
  EXPECT_FLOAT_EQ(seen_density(1.7F, 1.0), 1.7F);
}

std::vector<std::size_t> all_pixels(const Plane& plane) {
  std::vector<std::size_t> pixels(plane.values.size());
  std::iota(pixels.begin(), pixels.end(), std::size_t{0});
  return pixels;
}

ScannerSettings quiet() {
  ScannerSettings settings;
  settings.glare.share = 0.0;
  settings.blur_um = 0.0;
  return settings;
}

TEST(Sensor, ShotNoiseGrowsWithTheRootOfLight) {
  ScannerSettings settings = quiet();
  settings.bare_level = 0.8;
  settings.full_well = 20000.0;
  settings.read_noise = 30.0;
  std::vector<Plane> light(3, Plane(200, 200, 1.0F));
  expose_sensor(light, settings, 10.0, all_pixels(light[0]), 3);
  double sum = 0.0;
  double square = 0.0;
  for (const float value : light[1].values) {
    sum += value;
    square += static_cast<double>(value) * value;
  }
  const double mean = sum / 40000.0;
  const double electrons_sd = 20000.0 * std::sqrt(square / 40000.0 - mean * mean);
  EXPECT_NEAR(mean, 0.8, 0.0005);
  EXPECT_NEAR(electrons_sd, std::sqrt(0.8 * 20000.0 + 900.0), 2.0);
}

TEST(Sensor, ClippedShareIsTheShareAskedFor) {
  ScannerSettings settings = quiet();
  settings.exposure_rule = ExposureRule::kClippedShare;
  settings.clipped_share = 0.3;
  settings.tilt_x = {0.05, 0.05, 0.05};
  settings.full_well = 1e9;
  std::vector<Plane> light(3, Plane(200, 100, 1.0F));
  expose_sensor(light, settings, 10.0, all_pixels(light[0]), 3);
  double clipped = 0.0;
  for (const float value : light[0].values) clipped += value >= 1.0F ? 1.0 : 0.0;
  EXPECT_NEAR(clipped / 20000.0, 0.3, 0.01);
}

TEST(Sensor, LampTiltIsADensityFromBorderToBorder) {
  ScannerSettings settings = quiet();
  settings.tilt_x = {0.08, 0.08, 0.08};
  settings.full_well = 1e9;
  std::vector<Plane> light(3, Plane(100, 10, 1.0F));
  expose_sensor(light, settings, 10.0, all_pixels(light[0]), 3);
  const float left = light[2].at(0, 5);
  const float right = light[2].at(99, 5);
  EXPECT_NEAR(std::log10(left / right), 0.08 * 99.0 / 100.0, 0.0005);
}

TEST(Sensor, ConverterStepsAreWhole) {
  ScannerSettings settings = quiet();
  settings.adc_bits = 10;
  std::vector<Plane> light(3, Plane(50, 50, 0.6F));
  expose_sensor(light, settings, 10.0, all_pixels(light[0]), 3);
  for (const float value : light[0].values) {
    EXPECT_NEAR(value * 1023.0F, std::round(value * 1023.0F), 1e-3F);
  }
}

}  // namespace
}  // namespace filmsim
