#include "marks/find_scratches.h"
#include "tables/shipped_knowledge.h"

#include <algorithm>
#include <utility>
#include <vector>

#include <gmock/gmock.h>
#include <gtest/gtest.h>

namespace fogline {
namespace {

using testing::IsEmpty;
using testing::SizeIs;

constexpr double fine = 47.0;

const ScratchKnowledge& knowledge() {
  return shipped_knowledge().scan.marks.scratch;
}

FilmStrip long_film() {
  FilmStrip film;
  film.along_end_mm = 200.0;
  film.across_begin_mm = -17.0;
  film.across_end_mm = 17.0;
  return film;
}

MarkCandidate piece(double begin_mm, double end_mm, double across_mm, double contrast = -0.1) {
  MarkCandidate piece;
  piece.kind = MarkKind::scratch;
  piece.extent = {begin_mm, end_mm, across_mm - 0.01, across_mm + 0.01};
  piece.size_mm = end_mm - begin_mm;
  piece.width_mm = 0.04;
  piece.contrast_density = contrast;
  return piece;
}

std::vector<MarkCandidate> joined(std::vector<MarkCandidate> pieces,
                                  const FilmStrip& film = long_film(),
                                  double pixels_per_mm = fine) {
  return join_scratches(std::move(pieces), film, pixels_per_mm, knowledge());
}

TEST(JoinScratches, WithoutPiecesThereAreNone) {
  EXPECT_THAT(joined({}), IsEmpty());
}

TEST(JoinScratches, PiecesThatGoOnAreOne) {
  const auto found = joined({piece(10, 30, 2.0), piece(33, 60, 2.05), piece(55, 90, 2.02)});
  ASSERT_THAT(found, SizeIs(1));
  EXPECT_NEAR(found[0].extent.across_begin_mm, 1.99, 1e-9);
  EXPECT_NEAR(found[0].extent.across_end_mm, 2.06, 1e-9);
  EXPECT_EQ(found[0].size_mm, 80.0);
  EXPECT_EQ(found[0].middle.along_mm, 50.0);
  EXPECT_NEAR(found[0].middle.across_mm, 2.025, 1e-9);
  EXPECT_NEAR(found[0].area_mm2, 80.0 * 0.04, 1e-9);
}

TEST(JoinScratches, OrderOfPiecesDoesntMatter) {
  std::vector<MarkCandidate> pieces{piece(10, 30, 2.0), piece(20, 40, -5.0), piece(33, 60, 2.05),
                                    piece(55, 90, 2.02)};
  const auto before = [](const MarkCandidate& a, const MarkCandidate& b) {
    return a.extent.along_begin_mm < b.extent.along_begin_mm;
  };
  do {
    auto found = joined(pieces);
    std::sort(found.begin(), found.end(), before);
    ASSERT_THAT(found, SizeIs(2));
    EXPECT_EQ(found[0].size_mm, 80.0);
    EXPECT_EQ(found[1].size_mm, 20.0);
  } while (std::next_permutation(pieces.begin(), pieces.end(), before));
}

TEST(JoinScratches, WhatLiesApartStaysApart) {
  EXPECT_THAT(joined({piece(10, 30, 2.0), piece(40, 60, 2.0)}), SizeIs(2));
  EXPECT_THAT(joined({piece(10, 30, 2.0), piece(31, 60, 2.3)}), SizeIs(2));
}

TEST(JoinScratches, DenserDoesntGoOnAsThinner) {
  EXPECT_THAT(joined({piece(10, 30, 2.0, -0.1), piece(31, 60, 2.0, 0.1)}), SizeIs(2));
}

TEST(JoinScratches, ContrastAndBreadthAreThoseOfTheLengths) {
  MarkCandidate broad = piece(40, 50, 2.0, -0.2);
  broad.width_mm = 0.08;
  const auto found = joined({piece(10, 40, 2.0, -0.1), broad});
  ASSERT_THAT(found, SizeIs(1));
  EXPECT_NEAR(found[0].contrast_density, -0.125, 1e-9);
  EXPECT_NEAR(found[0].width_mm, 0.05, 1e-9);
}

TEST(JoinScratches, ShortOnesAreNone) {
  EXPECT_THAT(joined({piece(10, 10 + knowledge().least_mm - 0.1, 2.0)}), IsEmpty());
  EXPECT_THAT(joined({piece(10, 10 + knowledge().least_mm + 0.1, 2.0)}), SizeIs(1));
  // Two short ones that go on are long enough together.
  EXPECT_THAT(joined({piece(10, 14, 2.0), piece(15, 19, 2.0)}), SizeIs(1));
}

TEST(JoinScratches, CoarseScansAskForMoreLength) {
  const auto one = piece(10, 10 + knowledge().least_coarse_mm - 0.1, 2.0);
  EXPECT_THAT(joined({one}), SizeIs(1));
  EXPECT_THAT(joined({one}, long_film(), 12.0), IsEmpty());
}

TEST(JoinScratches, BroadOnesAreNone) {
  MarkCandidate broad = piece(10, 60, 2.0);
  broad.width_mm = knowledge().most_width_mm + 0.01;
  EXPECT_THAT(joined({broad}), IsEmpty());
}

TEST(JoinScratches, TheFilmsCutEdgesAreNone) {
  EXPECT_THAT(joined({piece(10, 60, -16.5), piece(10, 60, 16.5)}), IsEmpty());
  EXPECT_THAT(joined({piece(10, 60, -15.5), piece(10, 60, 15.5)}), SizeIs(2));
}

double odds_of(const MarkCandidate& one, const FilmStrip& film = long_film()) {
  return joined({one}, film).at(0).log_odds;
}

TEST(JoinScratches, LongerIsSurer) {
  EXPECT_GT(odds_of(piece(10, 60, 2.0)), odds_of(piece(10, 30, 2.0)));
}

TEST(JoinScratches, WallsAndStairsComeSideBySide) {
  std::vector<MarkCandidate> stairs;
  for (int i = 0; i < 4; ++i) {
    stairs.push_back(piece(10, 60, 2.0 + 0.5 * i));
  }
  const auto found = joined(stairs);
  ASSERT_THAT(found, SizeIs(4));
  for (const MarkCandidate& stair : found) {
    EXPECT_LT(stair.log_odds, odds_of(piece(10, 60, 2.0)) - 1.0);
  }
}

FilmStrip framed_film() {
  FilmStrip film = long_film();
  film.format = FilmFormat::f135;
  film.frames = {{10.0, 46.0, -12.0, 12.0}, {48.0, 84.0, -12.0, 12.0}, {86.0, 122.0, -12.0, 12.0}};
  return film;
}

// All of one length, in the middle of a strip with frames.
TEST(JoinScratches, FramesSpeakForAndAgainst) {
  const double crossing = odds_of(piece(35, 59, 2.0), framed_film());
  const double inside = odds_of(piece(54, 78, 2.0), framed_film());
  const double border_to_border = odds_of(piece(48, 84, 2.0), framed_film());
  const double in_rebate = odds_of(piece(54, 78, 13.5), framed_film());
  EXPECT_GT(crossing, inside);
  EXPECT_GT(in_rebate, inside);
  // Longer, and yet less sure: a horizon ends at both borders.
  EXPECT_LT(border_to_border, inside);
}

}  // namespace
}  // namespace fogline
