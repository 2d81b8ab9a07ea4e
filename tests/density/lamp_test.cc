#include "density/lamp.h"

#include "base/seeded_noise.h"
#include "film/drawn_scan.h"

#include <cmath>
#include <vector>

#include <gtest/gtest.h>

namespace fogline {
namespace {

/// Perforations on both sides of 120 mm of film.
std::vector<LightSample> samples_of(double (*log_light)(PointMm), double noise_density) {
  SeededNoise noise(9);
  std::vector<LightSample> samples;
  for (const double side : {-1.0, 1.0}) {
    for (int k = 0; k < 25; ++k) {
      LightSample sample;
      sample.film = {k * film_135::pitch_mm, side * film_135::row_across_mm};
      const double log10_light = log_light(sample.film) + noise.normal(noise_density);
      sample.light = {std::pow(10.0, log10_light), 0.9 * std::pow(10.0, log10_light),
                      0.8 * std::pow(10.0, log10_light)};
      samples.push_back(sample);
    }
  }
  return samples;
}

/// Falls by 0.04 along 100 mm, rises by 0.01 across 10 mm, bends.
double tilted(PointMm film) {
  const double s = film.along_mm / 100.0;
  return -0.1 - 0.04 * s + 0.001 * film.across_mm + 0.02 * s * s;
}

TEST(Lamp, FollowsATiltedLight) {
  const Lamp lamp = Lamp::fitted(samples_of(tilted, 0.0), 3);
  ASSERT_FALSE(lamp.empty());
  for (double s = 0.0; s <= 114.0; s += 6.0) {
    for (double t = -17.0; t <= 17.0; t += 4.0) {
      EXPECT_NEAR(std::log10(lamp.light({s, t}, 0)), tilted({s, t}), 1e-6);
      EXPECT_NEAR(lamp.light({s, t}, 1) / lamp.light({s, t}, 0), 0.9, 1e-6);
      EXPECT_NEAR(lamp.light({s, t}, 2) / lamp.light({s, t}, 0), 0.8, 1e-6);
    }
  }
  EXPECT_LT(lamp.scatter_density(), 1e-6);
  // Brightest at the near end below, darkest at the lowest of the parabola above.
  const double row = film_135::row_across_mm;
  EXPECT_NEAR(lamp.unevenness_density(), tilted({0.0, row}) - tilted({99.75, -row}), 1e-4);
}

TEST(Lamp, DropsATornHole) {
  std::vector<LightSample> samples = samples_of(tilted, 0.001);
  for (const std::size_t torn : {3U, 30U}) {
    for (double& light : samples[torn].light) {
      light *= 0.6;  // hangs over the hole
    }
  }
  const Lamp lamp = Lamp::fitted(samples, 3);
  for (double s = 0.0; s <= 114.0; s += 6.0) {
    EXPECT_NEAR(std::log10(lamp.light({s, 0.0}, 0)), tilted({s, 0.0}), 0.001);
  }
  EXPECT_NEAR(lamp.scatter_density(), 0.001, 0.0005);
}

TEST(Lamp, OfFewSamplesIsEven) {
  const std::vector<LightSample> all = samples_of(tilted, 0.0);
  const Lamp lamp = Lamp::fitted({all[0], all[1], all[2]}, 1);
  ASSERT_FALSE(lamp.empty());
  EXPECT_DOUBLE_EQ(lamp.light({0.0, 0.0}, 0), lamp.light({90.0, 12.0}, 0));
  EXPECT_LT(lamp.light({0.0, 0.0}, 0), all[0].light[0]);
  EXPECT_GT(lamp.light({0.0, 0.0}, 0), all[2].light[0]);
}

// One row says nothing of the light across the film: it is taken along only.
TEST(Lamp, OfOneRowIsEvenAcross) {
  std::vector<LightSample> samples = samples_of(tilted, 0.0);
  samples.resize(25);
  const Lamp lamp = Lamp::fitted(samples, 1);
  EXPECT_DOUBLE_EQ(lamp.light({50.0, -14.0}, 0), lamp.light({50.0, 14.0}, 0));
  EXPECT_GT(lamp.light({0.0, 0.0}, 0), lamp.light({90.0, 0.0}, 0));
}

TEST(Lamp, WithoutSamplesIsEmpty) {
  EXPECT_TRUE(Lamp::fitted({}, 1).empty());
}

struct FoundHoles {
  drawn::Scan scan;
  FilmStrip film;
};

FoundHoles drawn_holes() {
  FoundHoles found;
  drawn::Strip strip;
  strip.end_mm = 60.0;
  found.scan = drawn::scan_of(strip);
  const drawn::Strip& placed = found.scan.strips[0];
  found.film.format = FilmFormat::f135;
  found.film.map = FilmMap::straight(placed.origin, 0.0, found.scan.pixels_per_mm);
  found.film.along_end_mm = 60.0;
  found.film.across_begin_mm = -film_135::width_mm / 2.0;
  found.film.across_end_mm = film_135::width_mm / 2.0;
  for (const int row : {-1, 1}) {
    for (int k = 0; k < placed.holes_a_row(); ++k) {
      Perforation hole;
      hole.row = row;
      hole.film = {placed.first_hole_mm + k * film_135::pitch_mm, row * film_135::row_across_mm};
      found.film.perforations.push_back(hole);
    }
  }
  return found;
}

TEST(SamplesInHoles, ReadBareLightOnly) {
  const FoundHoles found = drawn_holes();
  const ScanGrid grid = drawn::grid_of(found.scan);
  const StraightStrip strip =
      straighten(grid, found.film.map, {-0.5, 60.5, -18.0, 18.0}, spot_pixels_per_mm);
  const std::vector<LightSample> samples = samples_in_holes(strip, found.film, ClippedShare(grid));
  ASSERT_EQ(samples.size(), found.film.perforations.size());
  for (const LightSample& sample : samples) {
    // Film lies 0.28 above: the least bit of it in a core would show. Grain 0.01 over 80 spots.
    EXPECT_NEAR(std::log10(sample.light[0] / found.scan.bare_light), 0.0, 0.006);
    EXPECT_EQ(sample.clipped_share[0], 0.0);
  }
}

TEST(SamplesInHoles, TellClippedLight) {
  FoundHoles found = drawn_holes();
  found.scan.bare_light = 1.2;
  const ScanGrid grid = drawn::grid_of(found.scan);
  const StraightStrip strip =
      straighten(grid, found.film.map, {-0.5, 60.5, -18.0, 18.0}, spot_pixels_per_mm);
  for (const LightSample& sample : samples_in_holes(strip, found.film, ClippedShare(grid))) {
    EXPECT_EQ(sample.clipped_share[0], 1.0);
  }
}

TEST(SamplesBesideFilm, ReadThePiecesGiven) {
  FoundHoles found = drawn_holes();
  found.film.bare_light = {{5.0, 29.0, 18.0, 20.0}};
  const ScanGrid grid = drawn::grid_of(found.scan);
  const std::vector<LightSample> samples =
      samples_beside_film(found.film, grid, ClippedShare(grid));
  ASSERT_EQ(samples.size(), 4U);  // pieces of 6 mm
  for (const LightSample& sample : samples) {
    EXPECT_NEAR(sample.light[0], found.scan.bare_light, 0.004);
  }
  EXPECT_NEAR(samples[0].film.along_mm, 8.0, 1e-9);
  EXPECT_NEAR(samples[0].film.across_mm, 19.0, 1e-9);
}

}  // namespace
}  // namespace fogline
