#include "film/strips/perforation_rows.h"

#include "base/seeded_noise.h"

#include <algorithm>
#include <cmath>
#include <numbers>
#include <set>

#include <gtest/gtest.h>

namespace fogline {
namespace {

/// Sizes of 135 film's holes by ISO 1007: 1.981 along and 2.794 across on a pitch of 4.750 mm.
constexpr double pitch_px = 40.0;
constexpr double hole_along_px = pitch_px * 1.981 / 4.750;
constexpr double hole_across_px = pitch_px * 2.794 / 4.750;

struct Row {
  int holes = 20;
  PointPx first{100.0, 80.0};
  /// Clockwise from +x.
  double turn_deg = 0.0;
  double noise_px = 0.0;
  std::set<int> missing = {};
  std::uint32_t seed = 1;
};

std::vector<BrightSpot> spots_of(const Row& row) {
  const double turn = row.turn_deg * std::numbers::pi / 180.0;
  SeededNoise noise(row.seed);
  std::vector<BrightSpot> spots;
  for (int k = 0; k < row.holes; ++k) {
    if (!row.missing.contains(k)) {
      spots.push_back({row.first.x + k * pitch_px * std::cos(turn) + noise.normal(row.noise_px),
                       row.first.y + k * pitch_px * std::sin(turn) + noise.normal(row.noise_px),
                       hole_along_px + noise.normal(row.noise_px),
                       hole_across_px + noise.normal(row.noise_px)});
    }
  }
  return spots;
}

void add(std::vector<BrightSpot>& spots, const std::vector<BrightSpot>& more) {
  spots.insert(spots.end(), more.begin(), more.end());
}

TEST(HoleRows, NoSpotsNoRows) {
  EXPECT_TRUE(hole_rows({}, true).empty());
  EXPECT_TRUE(hole_rows(spots_of({.holes = 2}), true).empty());
  EXPECT_EQ(hole_rows(spots_of({.holes = 3}), true).size(), 1U);
}

TEST(HoleRows, TellPitchPlaceAndSize) {
  for (const std::uint32_t seed : {1U, 2U, 3U, 4U}) {
    const std::vector<HoleRow> rows = hole_rows(spots_of({.noise_px = 0.5, .seed = seed}), true);
    ASSERT_EQ(rows.size(), 1U);
    EXPECT_TRUE(rows[0].along_x);
    ASSERT_EQ(rows[0].holes.size(), 20U);
    // The median of 19 steps of noise 0.5 * sqrt(2) is unsure by a fifth of a pixel.
    EXPECT_NEAR(rows[0].pitch_px, pitch_px, 0.6);
    EXPECT_NEAR(rows[0].across_at(500.0), 80.0, 0.5);
    EXPECT_NEAR(rows[0].median_across_size(), hole_across_px, 0.5);
    for (std::size_t k = 0; k < 20; ++k) {
      EXPECT_EQ(rows[0].holes[k].index - rows[0].holes[0].index, static_cast<int>(k));
    }
  }
}

// Film may lie askew by three degrees; what rises by ten is no row of holes along the axis.
TEST(HoleRows, LieNearAnAxis) {
  for (const double turn : {-3.0, 3.0}) {
    const std::vector<HoleRow> rows =
        hole_rows(spots_of({.first = {100.0, 200.0}, .turn_deg = turn}), true);
    ASSERT_EQ(rows.size(), 1U);
    EXPECT_EQ(rows[0].holes.size(), 20U);
    EXPECT_NEAR(rows[0].across_at(500.0), 200.0 + 400.0 * std::tan(turn * std::numbers::pi / 180.0),
                1e-6);
  }
  EXPECT_TRUE(hole_rows(spots_of({.turn_deg = 10.0}), true).empty());
}

TEST(HoleRows, RunAlongTheAxisAskedFor) {
  std::vector<BrightSpot> spots = spots_of({});
  EXPECT_TRUE(hole_rows(spots, false).empty());
  for (BrightSpot& spot : spots) {
    std::swap(spot.x, spot.y);
    std::swap(spot.width, spot.height);
  }
  EXPECT_TRUE(hole_rows(spots, true).empty());
  const std::vector<HoleRow> rows = hole_rows(spots, false);
  ASSERT_EQ(rows.size(), 1U);
  EXPECT_FALSE(rows[0].along_x);
  EXPECT_EQ(rows[0].holes.size(), 20U);
  EXPECT_NEAR(rows[0].across_at(300.0), 80.0, 1e-6);
}

// Tape over five holes leaves one row that counts on over them; a gap longer than eight makes two.
TEST(HoleRows, CountHiddenHoles) {
  const std::vector<HoleRow> taped = hole_rows(spots_of({.missing = {6, 7, 8, 9, 10}}), true);
  ASSERT_EQ(taped.size(), 1U);
  ASSERT_EQ(taped[0].holes.size(), 15U);
  EXPECT_EQ(taped[0].holes.back().index - taped[0].holes.front().index, 19);
  EXPECT_NEAR(taped[0].pitch_px, pitch_px, 1e-6);
  const std::vector<HoleRow> parted =
      hole_rows(spots_of({.missing = {5, 6, 7, 8, 9, 10, 11, 12, 13}}), true);
  ASSERT_EQ(parted.size(), 2U);
  EXPECT_EQ(parted[0].holes.size(), 6U);
  EXPECT_EQ(parted[1].holes.size(), 5U);
}

TEST(HoleRows, LongestFirstAndNoSpotTwice) {
  std::vector<BrightSpot> spots = spots_of({.holes = 8});
  add(spots, spots_of({.holes = 15, .first = {120.0, 300.0}}));
  add(spots, spots_of({.holes = 11, .first = {90.0, 520.0}}));
  const std::vector<HoleRow> rows = hole_rows(spots, true);
  ASSERT_EQ(rows.size(), 3U);
  EXPECT_EQ(rows[0].holes.size(), 15U);
  EXPECT_EQ(rows[1].holes.size(), 11U);
  EXPECT_EQ(rows[2].holes.size(), 8U);
}

// Pitch over length of a hole is 2.40: bricks (1.8) and posts (4.0) are no row.
TEST(HoleRows, HaveAHolesPitchOverLength) {
  for (const double length_share : {0.25, 0.55}) {
    std::vector<BrightSpot> spots = spots_of({});
    for (BrightSpot& spot : spots) {
      spot.width = length_share * pitch_px;
    }
    EXPECT_TRUE(hole_rows(spots, true).empty()) << length_share;
  }
}

// Sizes that jump from spot to spot, and spots that the image border cuts, link nothing.
TEST(HoleRows, AreOfOneSizeAndWhole) {
  std::vector<BrightSpot> uneven = spots_of({});
  for (std::size_t i = 0; i < uneven.size(); ++i) {
    uneven[i].height *= i % 2 == 0 ? 1.0 : 1.6;
  }
  EXPECT_TRUE(hole_rows(uneven, true).empty());
  std::vector<BrightSpot> cut = spots_of({});
  cut.front().at_border = cut.back().at_border = true;
  const std::vector<HoleRow> rows = hole_rows(cut, true);
  ASSERT_EQ(rows.size(), 1U);
  EXPECT_EQ(rows[0].holes.size(), 18U);
}

// A few spots of a hole's size strewn at random make no row, whatever the seed.
TEST(HoleRows, ChanceMakesNone) {
  for (std::uint32_t seed = 1; seed <= 20; ++seed) {
    SeededNoise noise(seed);
    std::vector<BrightSpot> spots;
    for (int i = 0; i < 12; ++i) {
      spots.push_back(
          {noise.uniform(0.0, 1000.0), noise.uniform(0.0, 800.0), hole_along_px, hole_across_px});
    }
    EXPECT_TRUE(hole_rows(spots, true).empty()) << seed;
    EXPECT_TRUE(hole_rows(spots, false).empty()) << seed;
  }
}

// Dust beside a row neither breaks nor joins it.
TEST(HoleRows, DustBesideThemIsLeftOut) {
  std::vector<BrightSpot> spots = spots_of({.noise_px = 0.3});
  for (const double x : {215.0, 330.0, 612.0}) {
    spots.push_back({x, 95.0, hole_along_px, hole_across_px});
  }
  const std::vector<HoleRow> rows = hole_rows(spots, true);
  ASSERT_EQ(rows.size(), 1U);
  EXPECT_EQ(rows[0].holes.size(), 20U);
}

TEST(HoleRows, MirroredSpotsGiveMirroredRows) {
  const std::vector<BrightSpot> spots =
      spots_of({.turn_deg = 1.5, .noise_px = 0.3, .missing = {4, 5, 12}});
  std::vector<BrightSpot> mirrored = spots;
  for (BrightSpot& spot : mirrored) {
    spot.x = 1000.0 - spot.x;
  }
  const std::vector<HoleRow> there = hole_rows(spots, true);
  const std::vector<HoleRow> back = hole_rows(mirrored, true);
  ASSERT_EQ(there.size(), 1U);
  ASSERT_EQ(back.size(), 1U);
  ASSERT_EQ(back[0].holes.size(), there[0].holes.size());
  EXPECT_NEAR(back[0].pitch_px, there[0].pitch_px, 1e-9);
  EXPECT_NEAR(back[0].across_at(600.0), there[0].across_at(400.0), 1e-6);
}

}  // namespace
}  // namespace fogline
