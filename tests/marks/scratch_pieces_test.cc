#include "marks/drawn_marks.h"
#include "marks/find_scratches.h"

#include <vector>

#include <gmock/gmock.h>
#include <gtest/gtest.h>

namespace fogline {
namespace {

using testing::IsEmpty;
using testing::SizeIs;

constexpr double clear = 0.3;
constexpr double grain = 0.02;
constexpr double width_mm = 0.05;

const ScratchKnowledge& knowledge() {
  return shipped_knowledge().scan.marks.scratch;
}

DrawnDensity grey_film(double pixels_per_mm = 40.0) {
  return {16.0, 8.0, pixels_per_mm, 1.0};
}

std::vector<MarkCandidate> pieces_of(DrawnDensity film, std::uint32_t seed = 1) {
  film.add_grain(grain, seed);
  return scratch_pieces(film.tile(clear), knowledge());
}

/// From 3 to 13 mm along the film.
DrawnDensity scratched(double across_mm, double contrast, double pixels_per_mm = 40.0) {
  DrawnDensity film = grey_film(pixels_per_mm);
  draw_line(film, {{3.0, across_mm}, {13.0, across_mm}}, width_mm, contrast);
  return film;
}

TEST(ScratchPieces, LineAlongTheFilmIsFoundFromEndToEnd) {
  for (const double contrast : {-0.15, 0.15}) {
    const std::vector<MarkCandidate> found = pieces_of(scratched(1.5, contrast));
    ASSERT_THAT(found, SizeIs(1)) << contrast;
    EXPECT_EQ(found[0].kind, MarkKind::scratch);
    // Averaged over two millimetres: an end is known to about half of that.
    EXPECT_NEAR(found[0].extent.along_begin_mm, 3.0, 1.0);
    EXPECT_NEAR(found[0].extent.along_end_mm, 13.0, 1.0);
    EXPECT_NEAR(0.5 * (found[0].extent.across_begin_mm + found[0].extent.across_end_mm), 1.5, 0.03);
    EXPECT_NEAR(found[0].contrast_density, contrast, 0.03);
    EXPECT_NEAR(found[0].width_mm, width_mm, 1.5 / 40.0);
  }
}

// One pixel broad, in the middle of a row.
TEST(ScratchPieces, HalfAsFineAScanShowsItToo) {
  const std::vector<MarkCandidate> found = pieces_of(scratched(1.5 + 0.5 / 20.0, -0.15, 20.0));
  ASSERT_THAT(found, SizeIs(1));
  EXPECT_NEAR(found[0].size_mm, 10.0, 2.0);
  EXPECT_NEAR(found[0].contrast_density, -0.15, 0.03);
}

TEST(ScratchPieces, ItMayDrift) {
  DrawnDensity film = grey_film();
  draw_line(film, {{3.0, 1.0}, {8.0, 1.06}, {13.0, 0.98}}, width_mm, -0.15);
  const std::vector<MarkCandidate> found = pieces_of(film);
  ASSERT_THAT(found, SizeIs(1));
  EXPECT_NEAR(found[0].size_mm, 10.0, 2.0);
}

TEST(ScratchPieces, GrainHasNone) {
  for (std::uint32_t seed = 1; seed <= 5; ++seed) {
    EXPECT_THAT(pieces_of(grey_film(), seed), IsEmpty()) << seed;
  }
}

TEST(ScratchPieces, StepBetweenTwoTonesIsNone) {
  DrawnDensity film = grey_film();
  film.draw([](PointMm at, double density) { return density + (at.across_mm > 0.5 ? 0.4 : 0.0); });
  EXPECT_THAT(pieces_of(film), IsEmpty());
}

TEST(ScratchPieces, BandIsNone) {
  DrawnDensity film = grey_film();
  draw_line(film, {{3.0, 0.0}, {13.0, 0.0}}, 0.5, -0.3);
  EXPECT_THAT(pieces_of(film), IsEmpty());
}

TEST(ScratchPieces, LineAcrossOrAslantIsNone) {
  DrawnDensity film = grey_film();
  draw_line(film, {{5.0, -3.0}, {5.0, 3.0}}, width_mm, -0.3);
  draw_line(film, {{7.0, -3.0}, {13.0, 3.0}}, width_mm, -0.3);
  EXPECT_THAT(pieces_of(film), IsEmpty());
}

// Averaging spreads a short line over two millimetres; it stays short.
TEST(ScratchPieces, ShortLineIsNone) {
  DrawnDensity film = grey_film();
  draw_line(film, {{7.0, 0.0}, {7.8, 0.0}}, width_mm, -0.15);
  EXPECT_THAT(pieces_of(film), IsEmpty());
}

TEST(ScratchPieces, RowOfDustIsNone) {
  DrawnDensity film = grey_film();
  for (int i = 0; i < 3; ++i) {
    film.draw_disc({4.0 + 4.0 * i, 0.0}, 0.15, 1.5);
  }
  EXPECT_THAT(pieces_of(film), IsEmpty());
}

TEST(ScratchPieces, MaskedFilmEndsIt) {
  DrawnDensity film = scratched(1.5, -0.15);
  film.add_grain(grain, 1);
  MarkTile tile = film.tile(clear);
  tile.usable.colRange(8 * 40, tile.usable.cols).setTo(0);
  const std::vector<MarkCandidate> found = scratch_pieces(tile, knowledge());
  ASSERT_THAT(found, SizeIs(1));
  EXPECT_LE(found[0].extent.along_end_mm, 8.0);
  tile.usable.setTo(0);
  EXPECT_THAT(scratch_pieces(tile, knowledge()), IsEmpty());
}

TEST(ScratchPieces, TwoHalfAMillimetreApartAreTwo) {
  DrawnDensity film = scratched(1.0, -0.15);
  draw_line(film, {{3.0, 1.5}, {13.0, 1.5}}, width_mm, -0.15);
  EXPECT_THAT(pieces_of(film), SizeIs(2));
}

// A wall's edge: the line's two sides differ.
TEST(ScratchPieces, LineOnAStepIsLessSure) {
  const std::vector<MarkCandidate> even = pieces_of(scratched(1.5, -0.2));
  DrawnDensity film = scratched(1.5, -0.2);
  film.draw([](PointMm at, double density) { return density + (at.across_mm > 1.5 ? 0.2 : 0.0); });
  const std::vector<MarkCandidate> on_step = pieces_of(film);
  ASSERT_THAT(even, SizeIs(1));
  ASSERT_THAT(on_step, SizeIs(1));
  EXPECT_LT(on_step[0].log_odds, even[0].log_odds - 0.5);
}

TEST(ScratchPieces, MirroredFilmHasTheMirroredPiece) {
  DrawnDensity film = scratched(1.5, -0.15);
  film.add_grain(grain, 2);
  const std::vector<MarkCandidate> found = scratch_pieces(film.tile(clear), knowledge());
  const std::vector<MarkCandidate> mirrored =
      scratch_pieces(film.mirrored().tile(clear), knowledge());
  ASSERT_THAT(found, SizeIs(1));
  ASSERT_THAT(mirrored, SizeIs(1));
  EXPECT_NEAR(mirrored[0].extent.across_begin_mm, -found[0].extent.across_end_mm, 0.03);
  EXPECT_NEAR(mirrored[0].size_mm, found[0].size_mm, 0.1);
  EXPECT_NEAR(mirrored[0].contrast_density, found[0].contrast_density, 0.005);
}

}  // namespace
}  // namespace fogline
