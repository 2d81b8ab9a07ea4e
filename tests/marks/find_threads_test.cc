#include "marks/find_threads.h"

#include "marks/drawn_marks.h"

#include <algorithm>
#include <cmath>
#include <numbers>
#include <vector>

#include <gmock/gmock.h>
#include <gtest/gtest.h>

namespace fogline {
namespace {

using testing::IsEmpty;
using testing::SizeIs;

constexpr double pixels_per_mm = 40.0;
constexpr double thread_mm = 0.05;
constexpr double contrast = 0.15;
constexpr double grain = 0.02;

const FibreKnowledge& knowledge() {
  return shipped_knowledge().scan.marks.fibre;
}

DrawnDensity grey_film() {
  return {14.0, 10.0, pixels_per_mm, 1.0};
}

std::vector<MarkCandidate> threads_in(const MarkTile& tile) {
  std::vector<MarkCandidate> threads = find_threads(tile, FilmStrip{}, knowledge());
  std::sort(threads.begin(), threads.end(), [](const MarkCandidate& a, const MarkCandidate& b) {
    return a.middle.along_mm < b.middle.along_mm;
  });
  return threads;
}

std::vector<MarkCandidate> threads_of(DrawnDensity film, std::uint32_t seed = 1) {
  film.add_grain(grain, seed);
  return threads_in(film.tile(0.3));
}

/// Half a circle about the middle of the film, opening to a side.
DrawnDensity half_circle(double radius_mm, double from_deg) {
  DrawnDensity film = grey_film();
  draw_line(film, arc({7.0, 0.0}, radius_mm, from_deg, from_deg + 180.0), thread_mm, contrast);
  return film;
}

TEST(FindThreads, CurvedThreadIsFoundWhereverItTurns) {
  for (const double from_deg : {0.0, 60.0, 90.0, 200.0}) {
    const std::vector<MarkCandidate> found = threads_of(half_circle(0.8, from_deg));
    ASSERT_THAT(found, SizeIs(1)) << from_deg;
    EXPECT_EQ(found[0].kind, MarkKind::fibre);
    EXPECT_GT(found[0].contrast_density, 0.5 * contrast);
    EXPECT_LT(found[0].contrast_density, 1.2 * contrast);
    // The box holds the thread's ends and its bow.
    for (const PointMm& at : arc({7.0, 0.0}, 0.8, from_deg + 10.0, from_deg + 170.0)) {
      EXPECT_GT(at.along_mm, found[0].extent.along_begin_mm - 0.05) << from_deg;
      EXPECT_LT(at.along_mm, found[0].extent.along_end_mm + 0.05) << from_deg;
      EXPECT_GT(at.across_mm, found[0].extent.across_begin_mm - 0.05) << from_deg;
      EXPECT_LT(at.across_mm, found[0].extent.across_end_mm + 0.05) << from_deg;
    }
  }
}

// Area is breadth times the way along the thread, not the box.
TEST(FindThreads, AreaFollowsTheWayAlongIt) {
  const std::vector<MarkCandidate> found = threads_of(half_circle(0.8, 0.0));
  ASSERT_THAT(found, SizeIs(1));
  // Steps along and aslant over whole pixels are longer than the arc, by 8 % at most.
  const double way_mm = found[0].area_mm2 / found[0].width_mm;
  EXPECT_GT(way_mm, 0.93 * 0.8 * std::numbers::pi);
  EXPECT_LT(way_mm, 1.1 * 0.8 * std::numbers::pi);
  EXPECT_NEAR(found[0].size_mm, std::hypot(1.6, 0.8), 0.15);
}

TEST(FindThreads, ThinnerLineIsNoFibre) {
  DrawnDensity film = grey_film();
  draw_line(film, arc({7.0, 0.0}, 0.8, 0.0, 180.0), thread_mm, -contrast);
  EXPECT_THAT(threads_of(film), IsEmpty());
}

TEST(FindThreads, LengthsBeyondAFibreAreNone) {
  DrawnDensity film = grey_film();
  draw_line(film, arc({3.0, 0.0}, 0.12, 0.0, 180.0), thread_mm, contrast);
  EXPECT_THAT(threads_of(film), IsEmpty());
  EXPECT_THAT(threads_of(half_circle(3.2, 90.0)), IsEmpty());
}

// What takes the light of a broad opaque line is a twig.
TEST(FindThreads, ThickThreadIsNone) {
  DrawnDensity film = grey_film();
  draw_line(film, arc({7.0, 0.0}, 0.8, 0.0, 180.0), thread_mm, 1.5);
  EXPECT_THAT(threads_of(film), IsEmpty());
}

TEST(FindThreads, StraightAlongTheFilmIsAScratch) {
  DrawnDensity film = grey_film();
  draw_line(film, {{3.5, 0.0}, {10.5, 0.0}}, thread_mm, contrast);
  EXPECT_THAT(threads_of(film), IsEmpty());
}

TEST(FindThreads, EdgeBetweenTwoTonesIsNone) {
  DrawnDensity film = grey_film();
  film.draw([](PointMm at, double density) {
    return density + (distance_mm(at, {7.0, 0.0}) < 2.0 ? 0.3 : 0.0);
  });
  EXPECT_THAT(threads_of(film), IsEmpty());
}

TEST(FindThreads, GrainHasNone) {
  for (std::uint32_t seed = 1; seed <= 4; ++seed) {
    EXPECT_THAT(threads_of(grey_film(), seed), IsEmpty()) << seed;
  }
}

TEST(FindThreads, TwoNearOneAnotherAreTwo) {
  DrawnDensity film = grey_film();
  draw_line(film, arc({5.5, 0.0}, 0.8, 90.0, 250.0), thread_mm, contrast);
  draw_line(film, arc({8.0, 0.0}, 0.8, -70.0, 90.0), thread_mm, contrast);
  const std::vector<MarkCandidate> found = threads_of(film);
  ASSERT_THAT(found, SizeIs(2));
  EXPECT_NEAR(found[0].middle.along_mm, 5.1, 0.15);
  EXPECT_NEAR(found[1].middle.along_mm, 8.4, 0.15);
}

TEST(FindThreads, BreakOfAPixelIsBridged) {
  DrawnDensity film = half_circle(0.8, 0.0);
  film.draw_in({6.985, 7.01, 0.7, 0.9}, [](PointMm, double) { return 1.0; });
  EXPECT_THAT(threads_of(film), SizeIs(1));
}

TEST(FindThreads, MaskedFilmHasNone) {
  DrawnDensity film = half_circle(0.8, 0.0);
  film.add_grain(grain, 1);
  MarkTile tile = film.tile(0.3);
  EXPECT_THAT(threads_in(tile), SizeIs(1));
  tile.usable.rowRange(tile.usable.rows / 2, tile.usable.rows).setTo(0);
  EXPECT_THAT(threads_in(tile), IsEmpty());
}

// A bowed thread, all alone, against the same among others: branches, grass and grids come so.
TEST(FindThreads, CompanyAndBranchesAreDoubted) {
  const double alone = threads_of(half_circle(0.8, 0.0)).at(0).log_odds;
  DrawnDensity forked = half_circle(0.8, 0.0);
  draw_line(forked, {{7.0, 0.8}, {7.3, 1.8}}, thread_mm, contrast);
  const std::vector<MarkCandidate> one_forked = threads_of(forked);
  ASSERT_THAT(one_forked, SizeIs(1));
  EXPECT_LT(one_forked[0].log_odds, alone - 1.0);
  DrawnDensity many = half_circle(0.8, 0.0);
  for (const double along : {4.5, 9.5}) {
    draw_line(many, arc({along, 0.0}, 0.8, 0.0, 180.0), thread_mm, contrast);
  }
  const std::vector<MarkCandidate> three = threads_of(many);
  ASSERT_THAT(three, SizeIs(3));
  EXPECT_LT(three[1].log_odds, alone - 1.0);
}

TEST(FindThreads, MirroredFilmHasTheMirroredThread) {
  DrawnDensity film = half_circle(0.8, 30.0);
  film.add_grain(grain, 3);
  const std::vector<MarkCandidate> found = threads_in(film.tile(0.3));
  const std::vector<MarkCandidate> mirrored = threads_in(film.mirrored().tile(0.3));
  ASSERT_THAT(found, SizeIs(1));
  ASSERT_THAT(mirrored, SizeIs(1));
  EXPECT_NEAR(mirrored[0].middle.across_mm, -found[0].middle.across_mm, 0.04);
  EXPECT_NEAR(mirrored[0].size_mm, found[0].size_mm, 0.08);
  EXPECT_NEAR(mirrored[0].contrast_density, found[0].contrast_density, 0.01);
}

}  // namespace
}  // namespace fogline
