#include "film/strips/clear_level.h"

#include "film/drawn_straight.h"

#include <cmath>
#include <limits>

#include <gtest/gtest.h>

namespace fogline {
namespace {

/// 100 mm of film with two even pictures 0.7 above its base.
drawn::Strip two_pictures() {
  drawn::Strip strip;
  strip.patches = {{{8.0, 44.0, -12.0, 12.0}, 0.7}, {{46.0, 82.0, -12.0, 12.0}, 0.7}};
  return strip;
}

/// Mean excess of a square millimetre.
double excess_at(const ClearLevel& level, double along_mm, double across_mm) {
  const ExcessImage& image = level.excess;
  const cv::Range rows(image.row(across_mm - 0.5), image.row(across_mm + 0.5));
  const cv::Range columns(image.column(along_mm - 0.5), image.column(along_mm + 0.5));
  return cv::mean(image.excess(rows, columns))[0];
}

ClearLevel from_rebate(const drawn::Strip& strip, const drawn::Laid& laid) {
  return clear_level_from_rebate(drawn::straight_of(strip, laid), drawn::known_film(strip));
}

/// A square millimetre of grain averages a hundred spots, and the fitted course as many.
constexpr double slack = 0.01;

TEST(ClearLevelFromRebate, ReadsBasePicturesAndGrain) {
  for (const std::uint32_t seed : {1U, 2U}) {
    for (const double base : {0.06, 0.5}) {
      drawn::Strip strip = two_pictures();
      strip.base_density = base;
      const ClearLevel level = from_rebate(strip, {.grain_density = 0.02, .seed = seed});
      SCOPED_TRACE(base);
      EXPECT_NEAR(level.above_bare, base, slack);
      EXPECT_NEAR(excess_at(level, 45.0, 0.0), 0.0, slack);
      EXPECT_NEAR(excess_at(level, 90.0, 5.0), 0.0, slack);
      EXPECT_NEAR(excess_at(level, 26.0, 0.0), 0.7, slack);
      EXPECT_NEAR(excess_at(level, 64.0, -8.0), 0.7, slack);
      // 300 spots a patch tell their scatter to a twentieth.
      EXPECT_NEAR(level.noise, 0.02, 0.002);
    }
  }
}

// A lamp that falls off by a tenth along the film darkens nothing.
TEST(ClearLevelFromRebate, TakesTheLampsCourseOut) {
  const ClearLevel level = from_rebate(two_pictures(), {.grain_density = 0.01, .lamp_fall = 0.1});
  for (const double along : {3.0, 45.0, 95.0}) {
    EXPECT_NEAR(excess_at(level, along, 0.0), 0.0, slack) << along;
  }
  EXPECT_NEAR(excess_at(level, 12.0, 0.0), 0.7, slack);
  EXPECT_NEAR(excess_at(level, 78.0, 0.0), 0.7, slack);
}

TEST(ClearLevelFromRebate, DoesntDependOnTheLamp) {
  const ClearLevel dim = from_rebate(two_pictures(), {.bare_light = 0.02, .grain_density = 0.02});
  const ClearLevel bright = from_rebate(two_pictures(), {.bare_light = 0.9, .grain_density = 0.02});
  EXPECT_NEAR(dim.above_bare, bright.above_bare, 1e-5);
  EXPECT_NEAR(dim.noise, bright.noise, 1e-5);
  EXPECT_NEAR(excess_at(dim, 26.0, 0.0), excess_at(bright, 26.0, 0.0), 1e-5);
}

// Names and numbers between every other pair of holes, and a fogged end: the rest is clear.
TEST(ClearLevelFromRebate, EdgePrintAndFogAreNotClear) {
  drawn::Strip printed = two_pictures();
  for (double along = 4.0; along < 96.0; along += 2.0 * film_135::pitch_mm) {
    printed.patches.push_back({{along, along + 2.0, 12.7, 17.5}, 0.9});
  }
  EXPECT_NEAR(from_rebate(printed, {.grain_density = 0.02}).above_bare, 0.28, slack);
  drawn::Strip fogged = two_pictures();
  fogged.patches.push_back({{0.0, 30.0, -18.0, 18.0}, 1.5});
  const ClearLevel level = from_rebate(fogged, {.grain_density = 0.02});
  EXPECT_NEAR(level.above_bare, 0.28, slack);
  EXPECT_NEAR(excess_at(level, 90.0, 0.0), 0.0, slack);
  EXPECT_NEAR(excess_at(level, 4.0, 0.0), 1.5, 3.0 * slack);
}

// A holder covers the outer half of the holes: the rebate beside the pictures is read.
TEST(ClearLevelFromRebate, ReadsBesidePartlyCoveredHoles) {
  drawn::Strip strip = two_pictures();
  for (const double side : {-1.0, 1.0}) {
    strip.patches.push_back(
        {{0.0, 100.0, side < 0.0 ? -18.0 : 14.0, side < 0.0 ? -14.0 : 18.0}, 3.0});
  }
  FilmStrip film = drawn::known_film(strip);
  for (Perforation& hole : film.perforations) {
    hole.whole = false;
  }
  const ClearLevel level =
      clear_level_from_rebate(drawn::straight_of(strip, {.grain_density = 0.02}), film);
  EXPECT_NEAR(excess_at(level, 90.0, 0.0), 0.0, slack);
  EXPECT_NEAR(excess_at(level, 26.0, 0.0), 0.7, slack);
}

TEST(ClearLevelFromRebate, WithoutHolesTheBrightestFilmIsClear) {
  const StraightStrip strip = drawn::straight_of(two_pictures(), {.grain_density = 0.02});
  const ClearLevel bare = clear_level_from_rebate(strip, {});
  const ClearLevel same = clear_level_from_brightest(strip);
  EXPECT_EQ(bare.above_bare, same.above_bare);
  EXPECT_EQ(bare.noise, same.noise);
}

/// What a holder's window shows of film: pictures from edge to edge and the gaps between them.
StraightStrip window_of(const drawn::Strip& strip, const drawn::Laid& laid) {
  drawn::Strip narrow = strip;
  narrow.perforated = false;
  narrow.half_width_mm = 11.5;
  return drawn::straight_of(narrow, laid);
}

// Only grain below clear level is noise, and the brightest fiftieth of it lies two deviations low.
TEST(ClearLevelFromBrightest, GapsAreClearAndPicturesArent) {
  for (const double lamp_fall : {0.0, 0.05}) {
    const ClearLevel level = clear_level_from_brightest(window_of(
        two_pictures(), {.beyond_mm = 0.0, .grain_density = 0.01, .lamp_fall = lamp_fall}));
    SCOPED_TRACE(lamp_fall);
    for (const double along : {4.0, 45.0, 90.0}) {
      EXPECT_NEAR(excess_at(level, along, 0.0), 0.0, 0.03) << along;
    }
    EXPECT_NEAR(excess_at(level, 26.0, 0.0), 0.7, 0.03);
    EXPECT_NEAR(excess_at(level, 64.0, 0.0), 0.7, 0.03);
  }
}

TEST(ClearLevelFromBrightest, UnknownStaysUnknown) {
  StraightStrip strip = window_of(two_pictures(), {.beyond_mm = 0.0});
  const float unknown = std::numeric_limits<float>::quiet_NaN();
  for (float& light : strip.light.samples()) {
    light = unknown;
  }
  const ClearLevel level = clear_level_from_brightest(strip);
  EXPECT_EQ(level.noise, 0.0);
  EXPECT_TRUE(std::isnan(level.excess.excess(10, 10)));
}

TEST(ClearLevelFromBrightest, StandsTheSmallestStrip) {
  StraightStrip strip;
  strip.light = Raster<float>(1, 1, 1, 0.5F);
  EXPECT_NEAR(clear_level_from_brightest(strip).excess.excess(0, 0), 0.0F, 1e-6F);
}

// A holder that covers both rows by half: what it leaves of the holes tells the lamp all the same.
TEST(ClearLevelFromRebate, HolesThatAHolderHalfCovers) {
  const drawn::Strip strip = two_pictures();
  StraightStrip straight = drawn::straight_of(strip, {.grain_density = 0.02});
  constexpr double covered_from_mm = film_135::row_across_mm;
  constexpr float holder = 1e-4F;
  for (int y = 0; y < straight.light.height(); ++y) {
    for (int x = 0; x < straight.light.width(); ++x) {
      if (std::abs(straight.across_mm(y)) > covered_from_mm) {
        straight.light.at(x, y) = holder;
      }
    }
  }
  FilmStrip film = drawn::known_film(strip);
  for (Perforation& hole : film.perforations) {
    hole.whole = false;
  }
  const ClearLevel level = clear_level_from_rebate(straight, film);
  EXPECT_NEAR(level.above_bare, 0.28, 2.0 * slack);
  EXPECT_NEAR(excess_at(level, 45.0, 0.0), 0.0, slack);
  EXPECT_NEAR(excess_at(level, 26.0, 0.0), 0.7, slack);
}

}  // namespace
}  // namespace fogline
