#include "marks/drawn_density.h"

#include <algorithm>
#include <numbers>

#include <gmock/gmock.h>
#include <gtest/gtest.h>

namespace fogline {
namespace {

using testing::HasSubstr;
using testing::IsEmpty;
using testing::SizeIs;

constexpr double fine = 1200.0 / 25.4;
constexpr double clear = 0.3;
constexpr double grey = 1.0;
constexpr double grain = 0.02;

DrawnDensity grey_film(double length_mm = 16.0) {
  return {length_mm, 14.0, fine, grey};
}

// A low-density spot of 20 pixels in grain of 0.02: 0.10 is found, 0.01 isn't, though a matched
// filter would see it: the false-alarm limit is our own choice.
TEST(FindMarks, FindsSpotOfTwentyPixels) {
  constexpr double diameter_mm = 20.0 / fine;
  DrawnDensity film = grey_film();
  film.draw_disc({8.0, 1.0}, diameter_mm, -0.10);
  film.add_grain(grain, 1);
  const MarkSearch found = film.search(clear);
  ASSERT_THAT(found.marks, SizeIs(1));
  EXPECT_EQ(found.marks[0].kind, MarkKind::air_bell);
  EXPECT_NEAR(found.marks[0].size_mm, diameter_mm, 0.15 * diameter_mm);
  EXPECT_NEAR(*found.marks[0].contrast_density, -0.10, 0.03);
  EXPECT_NEAR(found.marks[0].middle.along_mm, 8.0, 0.05);
  EXPECT_NEAR(found.marks[0].middle.across_mm, 1.0, 0.05);

  DrawnDensity faint = grey_film();
  faint.draw_disc({8.0, 1.0}, diameter_mm, -0.01);
  faint.add_grain(grain, 1);
  EXPECT_THAT(faint.search(clear).marks, IsEmpty());
}

TEST(FindMarks, GrainAloneIsNoMark) {
  DrawnDensity film = grey_film(40.0);
  film.add_grain(0.04, 2);
  const MarkSearch found = film.search(clear);
  EXPECT_THAT(found.marks, IsEmpty());
  EXPECT_FALSE(found.limits);
}

TEST(FindMarks, StepsOfThePictureAreNoMarks) {
  DrawnDensity film = grey_film();
  film.draw([](PointMm at, double density) {
    return density + (at.across_mm > 1.0 ? 0.4 : 0.0) - (at.along_mm > 9.0 ? 0.5 : 0.0);
  });
  film.add_grain(grain, 3);
  EXPECT_THAT(film.search(clear).marks, IsEmpty());
}

TEST(FindMarks, OpaqueGrainIsDust) {
  DrawnDensity film = grey_film();
  film.draw_disc({5.0, -2.0}, 0.2, 1.2);
  film.add_grain(grain, 4);
  const MarkSearch found = film.search(clear);
  ASSERT_THAT(found.marks, SizeIs(1));
  EXPECT_EQ(found.marks[0].kind, MarkKind::dust);
  EXPECT_GT(*found.marks[0].contrast_density, 0.8);
  const double area = std::numbers::pi * 0.1 * 0.1;
  EXPECT_NEAR(*found.marks[0].area_mm2, area, 0.3 * area);
  // The box holds the middle: 5 mm along, 2 mm above the middle line of 14 mm.
  const BoxPx& box = found.marks[0].box_px;
  EXPECT_NEAR(box.x + 0.5 * box.width, 5.0 * fine, 1.0);
  EXPECT_NEAR(box.y + 0.5 * box.height, 5.0 * fine, 1.0);
}

// A hole in the silver down to clear film, smaller than any air bell.
TEST(FindMarks, ClearSpeckIsPinhole) {
  DrawnDensity film = grey_film();
  film.draw_disc({5.0, 2.0}, 0.15, clear - grey);
  film.add_grain(grain, 5);
  const MarkSearch found = film.search(clear);
  ASSERT_THAT(found.marks, SizeIs(1));
  EXPECT_EQ(found.marks[0].kind, MarkKind::pinhole);
}

TEST(FindMarks, CurvedThreadIsFibre) {
  DrawnDensity film = grey_film();
  film.draw([](PointMm at, double density) {
    const double u = at.along_mm - 8.0;
    const double curve = 0.4 * std::sin(1.5 * u);
    const double distance =
        std::abs(at.across_mm - curve) / std::hypot(1.0, 0.6 * std::cos(1.5 * u));
    const bool on = std::abs(u) < 1.5 && distance < 1.0 / fine;
    return density + (on ? 0.15 : 0.0);
  });
  film.add_grain(grain, 6);
  const MarkSearch found = film.search(clear);
  ASSERT_THAT(found.marks, SizeIs(1));
  EXPECT_EQ(found.marks[0].kind, MarkKind::fibre);
  EXPECT_NEAR(found.marks[0].size_mm, 3.1, 0.5);
}

// Longer than two tiles of the search, and drifting: still one scratch.
TEST(FindMarks, ScratchOverTilesIsOne) {
  DrawnDensity film = grey_film(80.0);
  film.draw([](PointMm at, double density) {
    const double drift = 0.05 * std::sin(0.2 * at.along_mm);
    const bool on =
        at.along_mm > 5.0 && at.along_mm < 75.0 && std::abs(at.across_mm - 2.0 - drift) < 0.02;
    return density - (on ? 0.15 : 0.0);
  });
  film.add_grain(grain, 7);
  const MarkSearch found = film.search(clear);
  ASSERT_THAT(found.marks, SizeIs(1));
  EXPECT_EQ(found.marks[0].kind, MarkKind::scratch);
  EXPECT_NEAR(found.marks[0].size_mm, 70.0, 3.0);
  EXPECT_LT(*found.marks[0].contrast_density, 0.0);
}

TEST(FindMarks, ClosedRimIsDryingMark) {
  DrawnDensity film = grey_film();
  film.draw([](PointMm at, double density) {
    const double distance = std::hypot((at.along_mm - 8.0) / 1.3, at.across_mm) - 2.0;
    return density + 0.08 * std::exp(-0.5 * std::pow(distance / 0.15, 2.0));
  });
  film.add_grain(grain, 8);
  const MarkSearch found = film.search(clear);
  ASSERT_THAT(found.marks, SizeIs(1));
  EXPECT_EQ(found.marks[0].kind, MarkKind::drying_mark);
  const double area = std::numbers::pi * 2.6 * 2.0;
  EXPECT_NEAR(*found.marks[0].area_mm2, area, 0.2 * area);
  EXPECT_NEAR(*found.marks[0].contrast_density, 0.08, 0.03);
}

// Thin leaves before a dense sky: its specks between them are as dark, sharp and small as dust.
TEST(FindMarks, SkyBetweenLeavesIsNoDust) {
  DrawnDensity film = grey_film();
  SeededNoise places(9);
  for (int i = 0; i < 900; ++i) {
    const PointMm middle{places.uniform(3.0, 13.0), places.uniform(-5.0, 5.0)};
    const double radius = places.uniform(0.15, 0.45);
    const double leaf = places.uniform(0.30, 0.45);
    film.draw_in({middle.along_mm - radius, middle.along_mm + radius, middle.across_mm - radius,
                  middle.across_mm + radius},
                 [&](PointMm at, double density) {
                   const double distance =
                       std::hypot(at.along_mm - middle.along_mm, at.across_mm - middle.across_mm);
                   return distance < radius ? leaf : density;
                 });
  }
  film.add_grain(grain, 9);
  EXPECT_THAT(film.search(clear).marks, IsEmpty());
}

// Bars and dots of the edge print, outside the rows of perforations.
TEST(FindMarks, EdgePrintIsNoDust) {
  DrawnDensity film(24.0, 34.975, fine, clear);
  film.film.format = FilmFormat::f135;
  for (double along = 4.0; along < 20.0; along += 0.6) {
    film.draw_disc({along, -16.5}, 0.15, 0.6);
    film.draw_disc({along, 16.4}, 0.4, 0.8);
  }
  film.add_grain(0.01, 10);
  EXPECT_THAT(film.search(clear).marks, IsEmpty());
}

TEST(FindMarks, NothingAtPerforations) {
  DrawnDensity film(24.0, 34.975, fine, clear);
  film.film.format = FilmFormat::f135;
  for (double along = 2.0; along < 23.0; along += film_135::pitch_mm) {
    film.draw_in(
        {along - 1.0, along + 1.0, film_135::row_across_mm - 1.4, film_135::row_across_mm + 1.4},
        [](PointMm, double) { return 0.0; });
  }
  film.add_grain(0.01, 11);
  EXPECT_THAT(film.search(clear).marks, IsEmpty());
}

TEST(FindMarks, CoarseScanTellsItsLimits) {
  DrawnDensity film(40.0, 30.0, 12.0, grey);
  film.draw_disc({12.0, -2.0}, 1.2, -0.4);
  film.draw_disc({20.0, 4.0}, 0.2, 1.0);
  film.add_grain(0.01, 12);
  const MarkSearch found = film.search(clear);
  ASSERT_TRUE(found.limits);
  EXPECT_EQ(found.limits->kind, Unknown::marks_too_coarse);
  EXPECT_NEAR(found.limits->numbers.at(0), 12.0, 0.1);
  ASSERT_THAT(found.marks, SizeIs(1));
  EXPECT_EQ(found.marks[0].kind, MarkKind::air_bell);
  EXPECT_NEAR(found.marks[0].size_mm, 1.2, 0.15);
}

}  // namespace
}  // namespace fogline
