#include "film/strips/strip_lattice.h"

#include "film/drawn_finding.h"
#include "film/drawn_straight.h"

#include <algorithm>
#include <cmath>

#include <gtest/gtest.h>

namespace fogline {
namespace {

/// Film whose holes lie at whole pitches of its own millimetres, as strips found by them do.
drawn::Scan film_on_its_lattice() {
  drawn::Strip strip;
  strip.begin_mm = -2.0;
  strip.end_mm = 60.0;
  strip.first_hole_mm = 0.0;
  strip.frames = {strip.frame(12.0)};
  return drawn::scan_of(strip);
}

bool is_hole(const Perforation& hole, int row, int index) {
  return hole.row == row && std::abs(hole.film.along_mm - index * film_135::pitch_mm) < 1e-6;
}

void forget(FilmStrip& film, int row, const std::vector<int>& indices) {
  std::erase_if(film.perforations, [&](const Perforation& hole) {
    return std::any_of(indices.begin(), indices.end(),
                       [&](int index) { return is_hole(hole, row, index); });
  });
}

const Perforation* hole_at(const FilmStrip& film, int row, int index) {
  const auto at = std::find_if(film.perforations.begin(), film.perforations.end(),
                               [&](const Perforation& hole) { return is_hole(hole, row, index); });
  return at == film.perforations.end() ? nullptr : &*at;
}

TEST(AddPredictedHoles, FindsThoseThatWereMissed) {
  const drawn::Scan scan = film_on_its_lattice();
  const drawn::Strip& truth = scan.strips[0];
  const FilmStrip all = drawn::known_film(scan, truth);
  FilmStrip film = all;
  // At both ends, and within.
  forget(film, -1, {0, 1, 6});
  forget(film, +1, {5, 11, 12});
  add_predicted_holes(film, drawn::finding_of(scan));
  ASSERT_EQ(film.perforations.size(), all.perforations.size());
  for (const int index : {0, 1, 6}) {
    const Perforation* hole = hole_at(film, -1, index);
    ASSERT_NE(hole, nullptr) << index;
    EXPECT_FALSE(hole->whole);
    const PointPx drawn_at =
        drawn::scan_at(scan, truth, {index * film_135::pitch_mm, -film_135::row_across_mm});
    EXPECT_NEAR(hole->scan.x, drawn_at.x, 1e-6);
    EXPECT_NEAR(hole->scan.y, drawn_at.y, 1e-6);
  }
  // Row by row, along the film.
  EXPECT_TRUE(std::is_sorted(film.perforations.begin(), film.perforations.end(),
                             [](const Perforation& a, const Perforation& b) {
                               return std::pair(a.row, a.film.along_mm) <
                                      std::pair(b.row, b.film.along_mm);
                             }));
}

TEST(AddPredictedHoles, AddsNoneWhereAllAreKnown) {
  const drawn::Scan scan = film_on_its_lattice();
  FilmStrip film = drawn::known_film(scan, scan.strips[0]);
  const std::size_t count = film.perforations.size();
  add_predicted_holes(film, drawn::finding_of(scan));
  EXPECT_EQ(film.perforations.size(), count);
}

// Torn film mended with tape: where the lattice predicts a hole, film shows.
TEST(AddPredictedHoles, InventsNoneOnFilm) {
  drawn::Scan scan = film_on_its_lattice();
  FilmStrip film = drawn::known_film(scan, scan.strips[0]);
  forget(film, -1, {4, 5});
  FindingImage image = drawn::finding_of(scan);
  for (const int index : {4, 5}) {
    const PointPx at = drawn::scan_at(scan, scan.strips[0],
                                      {index * film_135::pitch_mm, -film_135::row_across_mm});
    drawn::paint(image, {static_cast<int>(at.x) - 14, static_cast<int>(at.y) - 14, 28, 28}, 0.28F);
  }
  add_predicted_holes(film, image);
  EXPECT_EQ(hole_at(film, -1, 4), nullptr);
  EXPECT_EQ(hole_at(film, -1, 5), nullptr);
}

// Beyond the film's end lies bare light, as bright as any hole.
TEST(AddPredictedHoles, InventsNoneInBareLight) {
  drawn::Scan scan = film_on_its_lattice();
  // Three pitches of bare light beyond the end.
  scan.width_px += static_cast<int>(3.0 * film_135::pitch_mm * scan.pixels_per_mm);
  FilmStrip film = drawn::known_film(scan, scan.strips[0]);
  const std::size_t count = film.perforations.size();
  add_predicted_holes(film, drawn::finding_of(scan));
  EXPECT_EQ(film.perforations.size(), count);
}

TEST(AddPredictedHoles, ARowWithoutAnyHoleStaysWithout) {
  const drawn::Scan scan = film_on_its_lattice();
  FilmStrip film = drawn::known_film(scan, scan.strips[0]);
  std::erase_if(film.perforations, [](const Perforation& hole) { return hole.row > 0; });
  const std::size_t count = film.perforations.size();
  add_predicted_holes(film, drawn::finding_of(scan));
  EXPECT_EQ(film.perforations.size(), count);
}

/// The strip as seen where only the holes from `first` to `last` of both rows were seen.
FilmStrip piece(const drawn::Scan& scan, int first, int last) {
  FilmStrip film = drawn::known_film(scan, scan.strips[0]);
  std::erase_if(film.perforations, [&](const Perforation& hole) {
    const long index = std::lround(hole.film.along_mm / film_135::pitch_mm);
    return index < first || index > last;
  });
  return film;
}

// A strip whose rows broke in two is one strip again, with the holes of both on one lattice.
TEST(StripsApart, BrokenRowsBecomeOne) {
  const drawn::Scan scan = film_on_its_lattice();
  FilmStrip shorter = piece(scan, 9, 12);
  // A piece counts its lattice from its own first hole.
  for (Perforation& hole : shorter.perforations) {
    hole.film.along_mm -= 9.0 * film_135::pitch_mm;
  }
  const std::vector<FilmStrip> strips = strips_apart({shorter, piece(scan, 0, 7)});
  ASSERT_EQ(strips.size(), 1U);
  EXPECT_EQ(strips[0].perforations.size(), 2U * (8U + 4U));
  for (const int index : {9, 10, 11, 12}) {
    EXPECT_NE(hole_at(strips[0], -1, index), nullptr) << index;
    EXPECT_NE(hole_at(strips[0], +1, index), nullptr) << index;
  }
  EXPECT_NEAR(strips[0].map.pixels_per_mm(), scan.pixels_per_mm, 1e-6);
}

// Spots in the picture are no holes of the film: they lie off its rows and are dropped.
TEST(StripsApart, AnAccidentOnTheFilmIsDropped) {
  const drawn::Scan scan = film_on_its_lattice();
  const FilmStrip film = piece(scan, 0, 12);
  FilmStrip accident = piece(scan, 3, 6);
  for (Perforation& hole : accident.perforations) {
    hole.scan.y += -hole.row * 7.0 * scan.pixels_per_mm;
  }
  const std::vector<FilmStrip> strips = strips_apart({accident, film});
  ASSERT_EQ(strips.size(), 1U);
  EXPECT_EQ(strips[0].perforations.size(), film.perforations.size());
}

TEST(StripsApart, FilmsBesideEachOtherStayInOrder) {
  drawn::Scan scan = film_on_its_lattice();
  const FilmStrip first = piece(scan, 0, 5);
  scan.strips[0].origin.y += 36.0 * scan.pixels_per_mm;
  const FilmStrip second = piece(scan, 0, 12);
  const std::vector<FilmStrip> strips = strips_apart({first, second});
  ASSERT_EQ(strips.size(), 2U);
  EXPECT_EQ(strips[0].perforations.size(), first.perforations.size());
  EXPECT_EQ(strips[1].perforations.size(), second.perforations.size());
  EXPECT_TRUE(strips_apart({}).empty());
}

}  // namespace
}  // namespace fogline
