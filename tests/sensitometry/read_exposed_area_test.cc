#include "sensitometry/read_exposed_area.h"

#include "density_film.h"

#include <gtest/gtest.h>

namespace fogline {
namespace {

TEST(ReadExposedArea, ReadsAnEvenArea) {
  const FilmStrip film = drawn::perforated_film();
  DensityStrip density = drawn::clear_density(film);
  drawn::add_density(density, {10.0, 46.0, -12.0, 12.0}, 0.80);
  const auto area = read_exposed_area(density, {16.0, 40.0, -6.0, 6.0});
  ASSERT_TRUE(area);
  EXPECT_NEAR(area->density, drawn::base_density + 0.80, 0.002);
  EXPECT_LT(area->doubt, 0.002);
  EXPECT_LT(area->spread, 0.01);
}

TEST(ReadExposedArea, ASpeckDoesntCount) {
  const FilmStrip film = drawn::perforated_film();
  DensityStrip density = drawn::clear_density(film);
  drawn::add_density(density, {20.0, 22.0, -1.0, 1.0}, 1.5);
  const auto area = read_exposed_area(density, {16.0, 40.0, -6.0, 6.0});
  ASSERT_TRUE(area);
  EXPECT_NEAR(area->density, drawn::base_density, 0.003);
}

TEST(ReadExposedArea, ASlopeIsDoubt) {
  const FilmStrip film = drawn::perforated_film();
  DensityStrip density = drawn::clear_density(film);
  for (int i = 0; i < 24; ++i) {
    drawn::add_density(density, {16.0 + i, 17.0 + i, -6.0, 6.0}, 0.01 * i);
  }
  const auto area = read_exposed_area(density, {16.0, 40.0, -6.0, 6.0});
  ASSERT_TRUE(area);
  EXPECT_GT(area->spread, 0.15);
  EXPECT_GT(area->doubt, 0.01);
}

TEST(ReadExposedArea, NeedsFilmInSight) {
  const FilmStrip film = drawn::perforated_film();
  DensityStrip density = drawn::clear_density(film);
  for (float& value : density.visual.samples()) {
    value = NAN;
  }
  EXPECT_FALSE(read_exposed_area(density, {16.0, 40.0, -6.0, 6.0}));
}

}  // namespace
}  // namespace fogline
