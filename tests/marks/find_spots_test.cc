#include "marks/find_spots.h"

#include "marks/drawn_marks.h"

#include <algorithm>
#include <cmath>
#include <vector>

#include <gmock/gmock.h>
#include <gtest/gtest.h>

namespace fogline {
namespace {

using testing::IsEmpty;
using testing::SizeIs;

constexpr double fine = 40.0;
constexpr double clear = 0.3;
constexpr double grey = 1.0;
constexpr double grain = 0.02;

const MarkKnowledge& knowledge() {
  return shipped_knowledge().scan.marks;
}

DrawnDensity grey_film(double pixels_per_mm = fine) {
  return {16.0, 12.0, pixels_per_mm, grey};
}

std::vector<MarkCandidate> spots_of(const DrawnDensity& film) {
  return find_spots(film.tile(clear), film.film, knowledge());
}

/// The spots of which the search itself is sure enough to tell them.
std::vector<MarkCandidate> likely(const DrawnDensity& film) {
  std::vector<MarkCandidate> sure;
  for (const MarkCandidate& mark : spots_of(film)) {
    if (mark.log_odds > 2.5) {
      sure.push_back(mark);
    }
  }
  return sure;
}

/// The spot nearest to a place, where one lies within a pixel or two.
const MarkCandidate* spot_at(const std::vector<MarkCandidate>& spots, PointMm at) {
  const auto found = std::find_if(spots.begin(), spots.end(), [&](const MarkCandidate& spot) {
    return distance_mm(spot.middle, at) < 0.05;
  });
  return found == spots.end() ? nullptr : &*found;
}

bool holds(const FilmExtent& extent, PointMm at) {
  return at.along_mm > extent.along_begin_mm && at.along_mm < extent.along_end_mm &&
         at.across_mm > extent.across_begin_mm && at.across_mm < extent.across_end_mm;
}

struct DrawnSpot {
  MarkKind kind;
  PointMm middle;
  double diameter_mm;
  double contrast;
};

const std::vector<DrawnSpot>& one_of_each() {
  static const std::vector<DrawnSpot> spots{
      {MarkKind::dust, {3.0, -3.0}, 0.2, 1.2},       {MarkKind::pinhole, {8.0, 3.0}, 0.18, -0.68},
      {MarkKind::air_bell, {12.0, -2.0}, 0.8, -0.3}, {MarkKind::dust, {13.0, 4.0}, 0.35, 0.9},
      {MarkKind::air_bell, {4.0, 2.0}, 1.6, -0.2},
  };
  return spots;
}

TEST(FindSpots, EachIsWhatItWasDrawnAs) {
  DrawnDensity film = grey_film();
  for (const DrawnSpot& spot : one_of_each()) {
    film.draw_disc(spot.middle, spot.diameter_mm, spot.contrast);
  }
  film.add_grain(grain, 1);
  const std::vector<MarkCandidate> found = likely(film);
  for (const MarkCandidate& mark : found) {
    EXPECT_TRUE(std::any_of(one_of_each().begin(), one_of_each().end(), [&](const DrawnSpot& spot) {
      return distance_mm(spot.middle, mark.middle) < 0.05;
    }));
  }
  for (const DrawnSpot& spot : one_of_each()) {
    const MarkCandidate* mark = spot_at(found, spot.middle);
    ASSERT_NE(mark, nullptr) << spot.diameter_mm;
    EXPECT_EQ(mark->kind, spot.kind) << spot.diameter_mm;
    EXPECT_NEAR(mark->size_mm, spot.diameter_mm, 0.1 * spot.diameter_mm + 1.0 / fine);
    EXPECT_NEAR(mark->contrast_density, spot.contrast, 0.1 * std::abs(spot.contrast) + 0.03);
    EXPECT_TRUE(holds(mark->extent, spot.middle));
  }
}

TEST(FindSpots, MirroredFilmHasTheMirroredSpots) {
  DrawnDensity film = grey_film();
  for (const DrawnSpot& spot : one_of_each()) {
    film.draw_disc(spot.middle, spot.diameter_mm, spot.contrast);
  }
  film.add_grain(grain, 2);
  const std::vector<MarkCandidate> found = likely(film);
  const std::vector<MarkCandidate> mirrored = likely(film.mirrored());
  ASSERT_GE(found.size(), one_of_each().size());
  for (const MarkCandidate& mark : found) {
    const MarkCandidate* other = spot_at(mirrored, {mark.middle.along_mm, -mark.middle.across_mm});
    ASSERT_NE(other, nullptr);
    EXPECT_EQ(other->kind, mark.kind);
    EXPECT_NEAR(other->size_mm, mark.size_mm, 1.0 / fine);
    EXPECT_NEAR(other->contrast_density, mark.contrast_density, 0.02);
  }
}

TEST(FindSpots, TwoNearOneAnotherAreTwo) {
  DrawnDensity film = grey_film();
  film.draw_disc({7.0, 0.0}, 0.2, 1.2);
  film.draw_disc({7.5, 0.0}, 0.2, 1.2);
  film.add_grain(grain, 4);
  const std::vector<MarkCandidate> found = likely(film);
  EXPECT_NE(spot_at(found, {7.0, 0.0}), nullptr);
  EXPECT_NE(spot_at(found, {7.5, 0.0}), nullptr);
}

TEST(FindSpots, GrainHasNone) {
  for (std::uint32_t seed = 1; seed <= 4; ++seed) {
    DrawnDensity film = grey_film();
    film.add_grain(0.04, seed);
    EXPECT_THAT(spots_of(film), IsEmpty()) << seed;
  }
}

TEST(FindSpots, MaskedFilmHasNone) {
  DrawnDensity film = grey_film();
  film.draw_disc({4.0, 0.0}, 0.2, 1.2);
  film.draw_disc({12.0, 0.0}, 0.2, 1.2);
  MarkTile tile = film.tile(clear);
  tile.usable.colRange(0, tile.usable.cols / 2).setTo(0);
  const std::vector<MarkCandidate> found = find_spots(tile, film.film, knowledge());
  ASSERT_THAT(found, SizeIs(1));
  EXPECT_NEAR(found[0].middle.along_mm, 12.0, 0.05);
  tile.usable.setTo(0);
  EXPECT_THAT(find_spots(tile, film.film, knowledge()), IsEmpty());
}

TEST(FindSpots, SpotsCutByTheBorderAreNotTold) {
  DrawnDensity film = grey_film();
  film.draw_disc({0.0, 0.0}, 0.8, -0.3);
  film.draw_disc({16.0, 1.0}, 0.8, -0.3);
  film.draw_disc({8.0, -6.0}, 0.4, 0.9);
  EXPECT_THAT(spots_of(film), IsEmpty());
}

TEST(FindSpots, CoarseScansTellLargeBellsOnly) {
  DrawnDensity film = grey_film(12.0);
  film.draw_disc({4.0, 0.0}, 0.4, 1.2);
  film.draw_disc({8.0, 3.0}, 0.25, -0.68);
  film.draw_disc({12.0, 0.0}, 1.2, -0.3);
  film.add_grain(0.01, 5);
  const std::vector<MarkCandidate> found = spots_of(film);
  ASSERT_THAT(found, SizeIs(1));
  EXPECT_EQ(found[0].kind, MarkKind::air_bell);
  EXPECT_NEAR(found[0].size_mm, 1.2, 1.5 / 12.0);
}

/// A strip of the rebate of 135 film, from the holes outwards, on which the edge print stands.
DrawnDensity rebate_film() {
  DrawnDensity film(16.0, 34.9, 24.0, clear);
  film.film.format = FilmFormat::f135;
  return film;
}

// A dot between two others is print; a lone one is not.
TEST(FindSpots, PrintIsNoDustButALoneSpeckIs) {
  constexpr double across = 16.4;
  DrawnDensity print = rebate_film();
  for (int i = 0; i < 8; ++i) {
    print.draw_disc({3.0 + 0.6 * i, across}, 0.2, 0.8);
  }
  for (const MarkCandidate& mark : spots_of(print)) {
    EXPECT_FALSE(mark.middle.along_mm > 3.3 && mark.middle.along_mm < 6.9);
  }
  DrawnDensity speck = rebate_film();
  speck.draw_disc({8.0, across}, 0.2, 0.8);
  const std::vector<MarkCandidate> found = spots_of(speck);
  const MarkCandidate* dust = spot_at(found, {8.0, across});
  ASSERT_NE(dust, nullptr);
  EXPECT_EQ(dust->kind, MarkKind::dust);
}

TEST(FindSpots, NothingThinIsToldWherePrintStands) {
  DrawnDensity film = rebate_film();
  film.draw_in({2.0, 14.0, 15.8, 17.2}, [](PointMm, double) { return grey; });
  film.draw_disc({8.0, 16.5}, 0.4, clear - grey);
  EXPECT_THAT(spots_of(film), IsEmpty());
}

}  // namespace
}  // namespace fogline
