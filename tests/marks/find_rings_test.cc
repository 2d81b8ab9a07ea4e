#include "marks/find_rings.h"

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

constexpr double clear = 0.3;
constexpr double grain = 0.008;
constexpr double rim_height = 0.08;
constexpr PointMm middle{9.0, 0.5};

const RingKnowledge& knowledge() {
  return shipped_knowledge().scan.marks.ring;
}

DrawnDensity grey_film() {
  return {18.0, 14.0, ring_pixels_per_mm, 1.0};
}

DrawnDensity with_rim(PointMm at = middle, double radius_mm = 2.5, double height = rim_height,
                      std::uint32_t seed = 1) {
  DrawnDensity film = grey_film();
  draw_rim(film, at, 1.3 * radius_mm, radius_mm, height);
  film.add_grain(grain, seed);
  return film;
}

/// Rings that are more likely rings than not, surest first.
std::vector<MarkCandidate> likely(const MarkTile& tile) {
  std::vector<MarkCandidate> rings;
  for (const MarkCandidate& ring : find_rings(tile, knowledge())) {
    if (ring.log_odds > 0.0) {
      rings.push_back(ring);
    }
  }
  std::sort(rings.begin(), rings.end(),
            [](const MarkCandidate& a, const MarkCandidate& b) { return a.log_odds > b.log_odds; });
  return rings;
}

std::vector<MarkCandidate> likely(const DrawnDensity& film) {
  return likely(film.tile(clear));
}

/// That a ring is found, and where and how it was drawn.
void expect_rim(const std::vector<MarkCandidate>& rings, PointMm at, double radius_mm) {
  ASSERT_FALSE(rings.empty()) << radius_mm;
  const MarkCandidate& ring = rings[0];
  EXPECT_EQ(ring.kind, MarkKind::drying_mark);
  EXPECT_LT(distance_mm(ring.middle, at), 0.2) << radius_mm;
  const double area = std::numbers::pi * 1.3 * radius_mm * radius_mm;
  EXPECT_NEAR(ring.area_mm2, area, 0.1 * area) << radius_mm;
  // From outer edge to outer edge of the rim.
  EXPECT_NEAR(ring.size_mm, 2.6 * radius_mm + 0.35, 0.35) << radius_mm;
  // Less what a rim of 0.15 mm loses to smoothing over a pixel.
  EXPECT_NEAR(ring.contrast_density, rim_height, 0.25 * rim_height) << radius_mm;
}

TEST(FindRings, RimsOfManySizesAreFound) {
  for (const double radius_mm : {1.8, 2.5, 4.0}) {
    expect_rim(likely(with_rim(middle, radius_mm)), middle, radius_mm);
  }
}

TEST(FindRings, SignsOfAWholeRimAreAlmostAllSeen) {
  const auto lines = closed_lines(with_rim().tile(clear), knowledge());
  ASSERT_FALSE(lines.empty());
  const auto surest = std::max_element(
      lines.begin(), lines.end(),
      [](const ClosedLine& a, const ClosedLine& b) { return a.signs.seen < b.signs.seen; });
  EXPECT_GT(surest->signs.seen, 0.95);
  EXPECT_LT(surest->signs.spread, 0.6);
  EXPECT_GT(surest->signs.alone, 0.7);
  // Between the ellipse's two radii.
  EXPECT_GT(surest->signs.mean_radius_mm, 2.5);
  EXPECT_LT(surest->signs.mean_radius_mm, 1.3 * 2.5);
}

TEST(FindRings, GrainHasNone) {
  for (std::uint32_t seed = 1; seed <= 5; ++seed) {
    DrawnDensity film = grey_film();
    film.add_grain(grain, seed);
    EXPECT_THAT(likely(film), IsEmpty()) << seed;
  }
}

TEST(FindRings, EvenFilmHasNone) {
  EXPECT_THAT(closed_lines(grey_film().tile(clear), knowledge()), IsEmpty());
}

TEST(FindRings, ThinnerRimIsNone) {
  EXPECT_THAT(likely(with_rim(middle, 2.5, -rim_height)), IsEmpty());
}

TEST(FindRings, DenserThanARimIsNone) {
  const auto lines = closed_lines(
      with_rim(middle, 2.5, 2.0 * knowledge().most_rim_density).tile(clear), knowledge());
  EXPECT_TRUE(std::all_of(lines.begin(), lines.end(), [](const ClosedLine& line) {
    return line.mark.contrast_density <= knowledge().most_rim_density;
  }));
  EXPECT_THAT(likely(with_rim(middle, 2.5, 2.0 * knowledge().most_rim_density)), IsEmpty());
}

TEST(FindRings, DiscOfAnotherToneIsNone) {
  for (const double contrast : {0.1, -0.1}) {
    DrawnDensity film = grey_film();
    film.draw_disc(middle, 5.0, contrast);
    film.add_grain(grain, 2);
    EXPECT_THAT(likely(film), IsEmpty()) << contrast;
  }
}

TEST(FindRings, HalfARimIsNone) {
  DrawnDensity film = grey_film();
  draw_line(film, arc(middle, 2.5, 0.0, 180.0), 0.35, rim_height);
  film.add_grain(grain, 3);
  EXPECT_THAT(likely(film), IsEmpty());
}

TEST(FindRings, SmallRingIsNone) {
  EXPECT_THAT(likely(with_rim(middle, 0.6)), IsEmpty());
}

TEST(FindRings, TwoRimsAreTwo) {
  DrawnDensity film = grey_film();
  const PointMm left{4.5, -1.0};
  const PointMm right{13.0, 2.0};
  draw_rim(film, left, 2.6, 2.0, rim_height);
  draw_rim(film, right, 2.6, 2.0, rim_height);
  film.add_grain(grain, 4);
  for (const PointMm at : {left, right}) {
    std::vector<MarkCandidate> there = likely(film);
    std::erase_if(there,
                  [&](const MarkCandidate& ring) { return distance_mm(ring.middle, at) > 1.5; });
    expect_rim(there, at, 2.0);
  }
}

// A rim partly on film that can't be searched shows in all directions that are left.
TEST(FindRings, RimAtMaskedFilmIsFoundByWhatIsLeft) {
  MarkTile tile = with_rim(middle, 2.5).tile(clear);
  const int columns = static_cast<int>((middle.along_mm - 2.6) * ring_pixels_per_mm);
  tile.usable.colRange(0, columns).setTo(0);
  EXPECT_FALSE(likely(tile).empty());
  tile.usable.colRange(0, static_cast<int>((middle.along_mm + 2.5) * ring_pixels_per_mm)).setTo(0);
  EXPECT_THAT(likely(tile), IsEmpty());
}

TEST(FindRings, MirroredFilmHasTheMirroredRing) {
  const DrawnDensity film = with_rim({8.0, 2.0}, 2.2);
  expect_rim(likely(film), {8.0, 2.0}, 2.2);
  expect_rim(likely(film.mirrored()), {8.0, -2.0}, 2.2);
}

TEST(RingLogOdds, EachSignCountsByItsWeight) {
  const RingScore score{-3.0, 2.0, -1.0, 4.0, 0.5, 0.25, -1.5};
  const RingSigns signs{0.9, 0.4, 0.8, std::exp(1.0), 2.0, 2.0};
  EXPECT_NEAR(ring_log_odds(signs, score), -3.0 + 1.8 - 0.4 + 3.2 + 0.5 + 0.5 - 3.0, 1e-12);
  RingSigns twice = signs;
  twice.mean_radius_mm *= 2.0;
  EXPECT_NEAR(ring_log_odds(twice, score) - ring_log_odds(signs, score), 0.5 * std::log(2.0),
              1e-12);
}

// The shipped weights: what a rim shows speaks for it.
TEST(RingLogOdds, ShippedWeightsHaveTheRightSigns) {
  const RingSigns signs{0.9, 0.4, 0.8, 2.5, 2.0, 0.0};
  const double odds = ring_log_odds(signs, knowledge().score);
  RingSigns torn = signs;
  torn.seen = 0.6;
  EXPECT_LT(ring_log_odds(torn, knowledge().score), odds);
  RingSigns uneven = signs;
  uneven.spread = 2.0;
  EXPECT_LT(ring_log_odds(uneven, knowledge().score), odds);
  RingSigns among_lines = signs;
  among_lines.alone = 0.5;
  EXPECT_LT(ring_log_odds(among_lines, knowledge().score), odds);
  RingSigns small = signs;
  small.mean_radius_mm = 1.2;
  EXPECT_LT(ring_log_odds(small, knowledge().score), odds);
  RingSigns in_a_row = signs;
  in_a_row.twins = 3.0;
  EXPECT_LT(ring_log_odds(in_a_row, knowledge().score), odds);
}

}  // namespace
}  // namespace fogline
