#include "simulator/camera_geometry.h"
#include "simulator/film_planes.h"
#include "simulator/filters.h"

#include <cmath>

#include <gtest/gtest.h>

namespace filmsim {
namespace {

// A strip evenly exposed to net density `net`, as grain leaves it.
Plane grainy(double net, double granularity, double grain_um, double pixels_per_mm) {
  Scenario scenario;
  scenario.pixels_per_mm = pixels_per_mm;
  StripPlan strip;
  strip.stock.fog = 0.0;
  strip.stock.granularity = granularity;
  strip.stock.grain_um = grain_um;
  scenario.strips.push_back(strip);
  FilmPlanes planes;
  planes.net = planes.clean_net = Plane(512, 512, static_cast<float>(net));
  planes.strip.assign(planes.net.values.size(), 1);
  add_grain(planes, scenario);
  return planes.net;
}

double sd_over_blocks(const Plane& plane, int side) {
  double sum = 0.0;
  double square = 0.0;
  int blocks = 0;
  for (int y = 0; y + side <= plane.height; y += side) {
    for (int x = 0; x + side <= plane.width; x += side) {
      double mean = 0.0;
      for (int j = 0; j < side; ++j) {
        for (int i = 0; i < side; ++i) mean += plane.at(x + i, y + j);
      }
      mean /= side * side;
      sum += mean;
      square += mean * mean;
      ++blocks;
    }
  }
  return std::sqrt(square / blocks - sum / blocks * (sum / blocks));
}

// Selwyn (1935): sd times the root of the area is constant.
TEST(Grain, FollowsSelwynsLawOverArea) {
  constexpr double kGranularity = 6e-4;
  constexpr double kPixelsPerMm = 20.0;
  const Plane plane = grainy(1.0, kGranularity, 0.0, kPixelsPerMm);
  for (const int side : {1, 2, 4, 8, 16}) {
    const double area_mm2 = side * side / (kPixelsPerMm * kPixelsPerMm);
    const double blocks = 512.0 / side * 512.0 / side;
    const double four_standard_errors = 4.0 * kGranularity / std::sqrt(2.0 * blocks);
    EXPECT_NEAR(sd_over_blocks(plane, side) * std::sqrt(area_mm2), kGranularity,
                four_standard_errors);
  }
}

TEST(Grain, GrowsWithTheRootOfDensity) {
  const double thin = sd_over_blocks(grainy(0.25, 6e-4, 0.0, 20.0), 1);
  const double dense = sd_over_blocks(grainy(1.0, 6e-4, 0.0, 20.0), 1);
  EXPECT_NEAR(dense / thin, 2.0, 0.02);
}

// Grains wider than a pixel: less noise in one pixel, the same over an area that holds many.
TEST(Grain, CorrelationLeavesLargeAreasAlone) {
  const double pixels_per_mm = 94.0;
  const Plane white = grainy(1.0, 6e-4, 0.0, pixels_per_mm);
  const Plane wide = grainy(1.0, 6e-4, 12.0, pixels_per_mm);
  EXPECT_LT(sd_over_blocks(wide, 1), 0.5 * sd_over_blocks(white, 1));
  EXPECT_NEAR(sd_over_blocks(wide, 16) / sd_over_blocks(white, 16), 1.0, 0.12);
}

// A rule of thumb: rms granularity is 1000 times the sd over a 48 micrometre disc at
// density 1; pictorial films lie between about 8 and 20 (from memory).
TEST(Grain, PopulationLimitsAreThoseOfPictorialFilm) {
  const double disc_mm2 = 3.14159265 / 4.0 * 0.048 * 0.048;
  EXPECT_NEAR(1000.0 * 3.5e-4 / std::sqrt(disc_mm2), 8.2, 0.1);
  EXPECT_NEAR(1000.0 * 9e-4 / std::sqrt(disc_mm2), 21.2, 0.1);
}

TEST(Blur, KeepsSumAndHasItsVariance) {
  for (const double sigma : {0.6, 0.8, 2.0}) {
    Plane point(41, 41);
    point.at(20, 20) = 1.0F;
    gaussian_blur(point, sigma, sigma);
    double sum = 0.0;
    double variance = 0.0;
    for (int y = 0; y < 41; ++y) {
      for (int x = 0; x < 41; ++x) {
        sum += point.at(x, y);
        variance += point.at(x, y) * std::pow(x - 20.0, 2.0);
      }
    }
    EXPECT_NEAR(sum, 1.0, 1e-5);
    EXPECT_NEAR(variance, sigma * sigma + 1.0 / 12.0,
                0.02 * sigma * sigma);  // plus the pixel's own
  }
}

TEST(WideBlur, HasItsVariance) {
  Plane point(401, 1);
  point.at(200, 0) = 1.0F;
  wide_blur(point, 20.0, 0.0);
  double variance = 0.0;
  for (int x = 0; x < 401; ++x) variance += point.at(x, 0) * std::pow(x - 200.0, 2.0);
  EXPECT_NEAR(std::sqrt(variance), 20.0, 0.2);
}

}  // namespace
}  // namespace filmsim
