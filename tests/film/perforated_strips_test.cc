#include "film/strips/perforated_strips.h"

#include "film/drawn_finding.h"

#include <algorithm>
#include <cmath>

#include <gtest/gtest.h>

namespace fogline {
namespace {

/// A place on the film agrees within a pixel of these scans of eight a millimetre.
constexpr double place_mm = 0.13;

drawn::Strip one_picture() {
  drawn::Strip strip;
  strip.end_mm = 60.0;
  strip.frames = {strip.frame(12.0)};
  return strip;
}

/// Every hole's place in the picture is where one was drawn, in its own row, and no two are one.
void expect_holes(const drawn::Scan& scan, const drawn::Strip& truth, const FilmStrip& found) {
  for (const Perforation& hole : found.perforations) {
    const PointMm at = drawn::film_at(scan, truth, hole.scan.x, hole.scan.y);
    const double k = (at.along_mm - truth.first_hole_mm) / film_135::pitch_mm;
    EXPECT_NEAR((k - std::round(k)) * film_135::pitch_mm, 0.0, place_mm);
    EXPECT_NEAR(at.across_mm, hole.row * film_135::row_across_mm, place_mm);
  }
}

std::ptrdiff_t holes_in_row(const FilmStrip& strip, int row) {
  return std::count_if(strip.perforations.begin(), strip.perforations.end(),
                       [&](const Perforation& hole) { return hole.row == row; });
}

TEST(PerforatedStrips, AreNoneWithoutFilm) {
  EXPECT_TRUE(perforated_strips(drawn::even_finding(300, 200, 0.0F)).empty());
  EXPECT_TRUE(perforated_strips(drawn::even_finding(1, 1, 0.3F)).empty());
  drawn::Strip blind = one_picture();
  blind.perforated = false;
  EXPECT_TRUE(perforated_strips(drawn::finding_of(drawn::scan_of(blind))).empty());
}

TEST(PerforatedStrips, PairTwoRowsAndMeasureTheScale) {
  for (const double pixels_per_mm : {5.0, 7.0, 10.0}) {
    const drawn::Scan scan = drawn::scan_of(one_picture(), pixels_per_mm);
    const std::vector<FilmStrip> strips = perforated_strips(drawn::finding_of(scan));
    SCOPED_TRACE(pixels_per_mm);
    ASSERT_EQ(strips.size(), 1U);
    EXPECT_EQ(strips[0].format, FilmFormat::f135);
    EXPECT_NEAR(strips[0].map.pixels_per_mm() / pixels_per_mm, 1.0, 0.003);
    EXPECT_EQ(holes_in_row(strips[0], -1), scan.strips[0].holes_a_row());
    EXPECT_EQ(holes_in_row(strips[0], +1), scan.strips[0].holes_a_row());
    EXPECT_NEAR(strips[0].map.rotation_deg(), 0.0, 0.1);
  }
}

// The map leads every place of the film to where it was drawn, up to the origin along the film.
TEST(PerforatedStrips, TheMapLeadsToTheFilm) {
  drawn::Scan scan = drawn::scan_of(one_picture(), 8.0, 6.0);
  for (const double turn : {-2.5, 0.0, 2.5}) {
    scan.strips[0].direction_deg = turn;
    const std::vector<FilmStrip> strips = perforated_strips(drawn::finding_of(scan));
    SCOPED_TRACE(turn);
    ASSERT_EQ(strips.size(), 1U);
    EXPECT_NEAR(strips[0].map.rotation_deg(), turn, 0.1);
    expect_holes(scan, scan.strips[0], strips[0]);
    for (const double along : {5.0, 30.0}) {
      for (const double across : {-15.0, 0.0, 15.0}) {
        const PointPx seen = strips[0].map.scan_from_film({along, across});
        EXPECT_NEAR(drawn::film_at(scan, scan.strips[0], seen.x, seen.y).across_mm, across,
                    place_mm);
      }
    }
  }
}

// A mirrored film is as good a film: the same holes at the mirrored places. Turned by a quarter it
// runs down.
TEST(PerforatedStrips, MirroredAndTurnedPicturesGiveTheSameFilm) {
  const drawn::Scan scan = drawn::scan_of(one_picture());
  const FindingImage image = drawn::finding_of(scan);
  const std::vector<FilmStrip> plain = perforated_strips(image);
  ASSERT_EQ(plain.size(), 1U);
  for (const drawn::Turn turn :
       {drawn::Turn::left_right, drawn::Turn::upside_down, drawn::Turn::quarter}) {
    const std::vector<FilmStrip> strips = perforated_strips(drawn::turned(image, turn));
    ASSERT_EQ(strips.size(), 1U);
    ASSERT_EQ(strips[0].perforations.size(), plain[0].perforations.size());
    EXPECT_NEAR(strips[0].map.pixels_per_mm(), plain[0].map.pixels_per_mm(), 0.01);
    EXPECT_NEAR(std::abs(strips[0].map.direction_deg()), turn == drawn::Turn::quarter ? 90.0 : 0.0,
                0.1);
    for (const Perforation& hole : plain[0].perforations) {
      const PointPx at = drawn::turned(hole.scan, turn, scan.width_px, scan.height_px);
      EXPECT_TRUE(std::any_of(strips[0].perforations.begin(), strips[0].perforations.end(),
                              [&](const Perforation& other) {
                                return std::hypot(other.scan.x - at.x, other.scan.y - at.y) < 1.0;
                              }));
    }
  }
}

// A holder hides one row; the other knows on which side the picture lies.
TEST(PerforatedStrips, OneRowIsEnough) {
  for (const int hidden : {-1, +1}) {
    drawn::Scan scan = drawn::scan_of(one_picture());
    scan.surround_density = 0.0;
    drawn::Strip holder;
    holder.perforated = false;
    holder.base_density = 4.0;
    holder.begin_mm = -10.0;
    holder.end_mm = 80.0;
    holder.half_width_mm = 5.0;
    holder.origin = scan.strips[0].origin;
    // Covers everything beyond 12.45 mm: the row and the edge of the film.
    holder.origin.y += hidden * 17.45 * scan.pixels_per_mm;
    scan.strips.insert(scan.strips.begin(), holder);
    const std::vector<FilmStrip> strips = perforated_strips(drawn::finding_of(scan));
    SCOPED_TRACE(hidden);
    ASSERT_EQ(strips.size(), 1U);
    EXPECT_EQ(holes_in_row(strips[0], hidden), 0);
    EXPECT_EQ(holes_in_row(strips[0], -hidden), scan.strips[1].holes_a_row());
    expect_holes(scan, scan.strips[1], strips[0]);
    // The middle line lies where it was drawn, though one row alone tells it.
    const PointPx middle = strips[0].map.scan_from_film({20.0, 0.0});
    EXPECT_NEAR(drawn::film_at(scan, scan.strips[1], middle.x, middle.y).across_mm, 0.0, 0.2);
  }
}

// A holder covers the outer half of both rows: holes are told from their inner edges, and that they
// aren't whole.
TEST(PerforatedStrips, HalfCoveredHolesLieWhereTheirInnerEdgesSay) {
  drawn::Scan scan = drawn::scan_of(one_picture());
  const drawn::Strip& strip = scan.strips[0];
  const double half_mm = film_135::row_across_mm;
  scan.surround_density = 4.0;
  scan.window = BoxPx{0.0, strip.origin.y - half_mm * scan.pixels_per_mm,
                      static_cast<double>(scan.width_px), 2.0 * half_mm * scan.pixels_per_mm};
  const std::vector<FilmStrip> strips = perforated_strips(drawn::finding_of(scan));
  ASSERT_EQ(strips.size(), 1U);
  EXPECT_GE(holes_in_row(strips[0], -1), strip.holes_a_row() - 1);
  EXPECT_GE(holes_in_row(strips[0], +1), strip.holes_a_row() - 1);
  for (const Perforation& hole : strips[0].perforations) {
    EXPECT_FALSE(hole.whole);
  }
  expect_holes(scan, strip, strips[0]);
}

// Two strips on one glass, above each other and beside each other, in order.
TEST(PerforatedStrips, TwoFilmsAreTwoStripsInOrder) {
  drawn::Scan scan = drawn::scan_of(one_picture());
  drawn::Strip second = scan.strips[0];
  second.first_hole_mm = 3.4;
  second.origin.y += 42.0 * scan.pixels_per_mm;
  scan.height_px += static_cast<int>(42.0 * scan.pixels_per_mm);
  // Drawn last first: the order is the picture's.
  scan.strips = {second, scan.strips[0]};
  const FindingImage image = drawn::finding_of(scan);
  const std::vector<FilmStrip> lying = perforated_strips(image);
  ASSERT_EQ(lying.size(), 2U);
  expect_holes(scan, scan.strips[1], lying[0]);
  expect_holes(scan, scan.strips[0], lying[1]);
  const std::vector<FilmStrip> standing =
      perforated_strips(drawn::turned(image, drawn::Turn::quarter));
  ASSERT_EQ(standing.size(), 2U);
  EXPECT_LT(standing[0].map.scan_from_film({}).x, standing[1].map.scan_from_film({}).x);
}

// Light or dark lamp, grain of any size up to a tenth of density: the same holes.
TEST(PerforatedStrips, GrainAddsAndMovesNoHole) {
  for (const double grain : {0.02, 0.04}) {
    for (const std::uint32_t seed : {1U, 2U}) {
      drawn::Scan scan = drawn::scan_of(one_picture());
      scan.grain_density = grain;
      scan.seed = seed;
      const std::vector<FilmStrip> strips = perforated_strips(drawn::finding_of(scan));
      ASSERT_EQ(strips.size(), 1U) << grain;
      EXPECT_EQ(strips[0].perforations.size(),
                static_cast<std::size_t>(2 * scan.strips[0].holes_a_row()));
      expect_holes(scan, scan.strips[0], strips[0]);
    }
  }
}

}  // namespace
}  // namespace fogline
