#include "film/strips/plausible_rows.h"

#include "film/drawn_finding.h"

#include <algorithm>
#include <cmath>
#include <utility>

#include <gtest/gtest.h>

namespace fogline {
namespace {

/// 61 mm of film with one picture at eight pixels a millimetre: a pitch is 38 pixels (ISO 1007:
/// 4.750 mm).
drawn::Scan short_film() {
  drawn::Strip strip;
  strip.end_mm = 61.0;
  strip.frames = {strip.frame(12.0)};
  return drawn::scan_of(strip);
}

constexpr double pitch_px = 8.0 * 4.750;
/// A hole's size in whole pixels, for painted rows.
constexpr int hole_along_px = 16;
constexpr int hole_across_px = 22;

/// A dark grey picture with rows of holes of the given light painted on it.
void paint_row(FindingImage& image, int y, float level, int across_px = hole_across_px) {
  for (int k = 0; k < 12; ++k) {
    drawn::paint(image, {30 + static_cast<int>(pitch_px) * k, y, hole_along_px, across_px}, level);
  }
}

constexpr int width = 500;
constexpr int height = 400;

TEST(PlausibleRows, AreBothRowsOfAFilm) {
  for (const std::uint32_t seed : {1U, 2U}) {
    drawn::Scan scan = short_film();
    scan.seed = seed;
    scan.grain_density = 0.02;
    const std::vector<HoleRow> rows = plausible_rows(drawn::finding_of(scan));
    ASSERT_EQ(rows.size(), 2U);
    for (const HoleRow& row : rows) {
      EXPECT_TRUE(row.along_x);
      EXPECT_EQ(row.holes.size(), static_cast<std::size_t>(scan.strips[0].holes_a_row()));
      EXPECT_NEAR(row.pitch_px, pitch_px, 0.005 * pitch_px);
      EXPECT_NEAR(mm_per_px(row), 1.0 / 8.0, 0.005 / 8.0);
      EXPECT_NEAR(hole_level(row), 0.0, 0.02);
    }
  }
}

TEST(PlausibleRows, RunAsTheFilmDoes) {
  const FindingImage image = drawn::turned(drawn::finding_of(short_film()), drawn::Turn::quarter);
  const std::vector<HoleRow> rows = plausible_rows(image);
  ASSERT_EQ(rows.size(), 2U);
  EXPECT_FALSE(rows[0].along_x);
  EXPECT_FALSE(rows[1].along_x);
}

TEST(PlausibleRows, NoFilmHasNone) {
  EXPECT_TRUE(plausible_rows(drawn::even_finding(width, height, 0.0F)).empty());
  EXPECT_TRUE(plausible_rows(drawn::even_finding(width, height, 0.7F)).empty());
  EXPECT_TRUE(plausible_rows(drawn::even_finding(1, 1, 0.0F)).empty());
}

// Rows of lit windows in a picture: not as bright as the lamp that shows through the film's holes.
TEST(PlausibleRows, WindowsInAPictureArentAmongThem) {
  FindingImage image = drawn::even_finding(width, height, 0.6F);
  paint_row(image, 40, 0.0F);
  paint_row(image, 340, 0.0F);
  paint_row(image, 200, 0.3F);
  const std::vector<HoleRow> rows = plausible_rows(image);
  ASSERT_EQ(rows.size(), 2U);
  for (const HoleRow& row : rows) {
    EXPECT_NEAR(hole_level(row), 0.0, 1e-6);
    EXPECT_GT(std::abs(row.across_at(200.0) - 211.0), 100.0);
  }
}

/// Darkens the picture evenly from one side to the other.
void let_fall_off(FindingImage& image, float right_log_light, float below_log_light) {
  for (int y = 0; y < image.log_light.rows; ++y) {
    for (int x = 0; x < image.log_light.cols; ++x) {
      image.log_light(y, x) +=
          right_log_light * static_cast<float>(x) / static_cast<float>(image.log_light.cols) +
          below_log_light * static_cast<float>(y) / static_cast<float>(image.log_light.rows);
    }
  }
}

// A makeshift lamp that falls off to a quarter along the film, or across it.
TEST(PlausibleRows, AreFoundUnderALampThatFallsOff) {
  for (const auto& [right, below] : {std::pair{0.6F, 0.0F}, {0.0F, 0.45F}, {0.4F, 0.3F}}) {
    FindingImage image = drawn::finding_of(short_film());
    let_fall_off(image, right, below);
    const std::vector<HoleRow> rows = plausible_rows(image);
    ASSERT_EQ(rows.size(), 2U) << right << ' ' << below;
    EXPECT_EQ(rows[0].holes.size(), rows[1].holes.size()) << right << ' ' << below;
  }
}

// Something brighter beside them: the spots are grey squares, not the lamp.
TEST(PlausibleRows, NothingNearIsBrighter) {
  FindingImage image = drawn::even_finding(width, height, 0.6F);
  paint_row(image, 40, 0.3F);
  ASSERT_EQ(plausible_rows(image).size(), 1U);
  drawn::paint(image, {0, 70, width, 20}, 0.0F);
  EXPECT_TRUE(plausible_rows(image).empty());
}

// Rows lie as a pair at the distance that they have on film (25.37 mm between their inner edges,
// ISO 1007), either named first, and at no other.
TEST(PlausibleRows, PairAtTheFilmsDistance) {
  const std::vector<HoleRow> rows = plausible_rows(drawn::finding_of(short_film()));
  ASSERT_EQ(rows.size(), 2U);
  const bool first_is_low = rows[0].across_at(100.0) < rows[1].across_at(100.0);
  const HoleRow& low = first_is_low ? rows[0] : rows[1];
  HoleRow high = first_is_low ? rows[1] : rows[0];
  EXPECT_TRUE(are_pair(low, high));
  EXPECT_FALSE(are_pair(high, low));
  for (RowHole& hole : high.holes) {
    hole.spot.y += 0.5 * pitch_px;
  }
  EXPECT_FALSE(are_pair(low, high));
}

// A hole is 0.59 of the pitch across (2.794 of 4.750 mm); slots three quarters across are none.
TEST(PlausibleRows, AreNoWiderThanHoles) {
  FindingImage image = drawn::even_finding(width, height, 0.6F);
  paint_row(image, 40, 0.0F, 29);
  EXPECT_TRUE(plausible_rows(image).empty());
  paint_row(image, 200, 0.0F, 24);
  EXPECT_EQ(plausible_rows(image).size(), 1U);
}

// Spots of one row that differ among themselves by a tenth and more of density aren't one lamp.
TEST(PlausibleRows, ShowOneLamp) {
  FindingImage image = drawn::even_finding(width, height, 0.6F);
  for (int k = 0; k < 12; ++k) {
    drawn::paint(image, {30 + static_cast<int>(pitch_px) * k, 40, hole_along_px, hole_across_px},
                 0.09F * static_cast<float>(k % 4));
  }
  EXPECT_TRUE(plausible_rows(image).empty());
}

// Two rows at one pitch, a third at four fifths of it: one scan has one scale.
TEST(PlausibleRows, HaveOneScale) {
  FindingImage image = drawn::even_finding(width, height, 0.6F);
  paint_row(image, 40, 0.0F);
  paint_row(image, 200, 0.0F);
  for (int k = 0; k < 10; ++k) {
    drawn::paint(image, {30 + 30 * k, 330, 13, 18}, 0.0F);
  }
  const std::vector<HoleRow> rows = plausible_rows(image);
  ASSERT_EQ(rows.size(), 2U);
  EXPECT_NEAR(rows[0].pitch_px, pitch_px, 1e-6);
  EXPECT_NEAR(rows[1].pitch_px, pitch_px, 1e-6);
}

// Light is read along the row at the distance asked for, and there is none beyond the image.
TEST(LineValues, ReadBesideTheRow) {
  FindingImage image = drawn::even_finding(width, height, 0.6F);
  paint_row(image, 40, 0.0F);
  drawn::paint(image, {0, 85, width, 10}, 1.5F);
  const std::vector<HoleRow> rows = plausible_rows(image);
  ASSERT_EQ(rows.size(), 1U);
  // The dark line's middle lies 90 - 51 pixels below the row's.
  const std::vector<double> dark = line_values(image, rows[0], 39.0 / 8.0);
  ASSERT_FALSE(dark.empty());
  for (const double value : dark) {
    EXPECT_NEAR(value, 1.5, 1e-6);
  }
  const std::vector<double> grey = line_values(image, rows[0], -3.0);
  ASSERT_FALSE(grey.empty());
  EXPECT_NEAR(*std::min_element(grey.begin(), grey.end()), 0.6, 1e-6);
  EXPECT_TRUE(line_values(image, rows[0], -51.0 / 8.0 - 1.0).empty());
}

}  // namespace
}  // namespace fogline
