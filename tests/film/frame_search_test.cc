#include "film/frames/frame_search.h"

#include "film/drawn_profile.h"

#include <algorithm>

#include <gtest/gtest.h>

namespace fogline {
namespace {

using drawn::profile_of;
using drawn::Spans;

/// What cameras for 135 film make: the whole frame, and rarer its half.
const std::vector<FrameKind> whole_or_half{{36.0, 0.8, 0.0}, {18.0, 0.8, 10.0}};
constexpr double usual_gap_mm = 2.0;

FrameSeries search(const FrameProfile& profile) {
  return find_frames(profile, whole_or_half, usual_gap_mm);
}

/// Frames lie where they were drawn, to half a column.
void expect_frames(const FrameSeries& found, const Spans& truth, double slack_mm = 0.05) {
  ASSERT_EQ(found.frames.size(), truth.size());
  for (std::size_t i = 0; i < truth.size(); ++i) {
    EXPECT_NEAR(found.frames[i].begin_mm, truth[i].first, slack_mm) << i;
    EXPECT_NEAR(found.frames[i].end_mm, truth[i].second, slack_mm) << i;
  }
}

TEST(FindFrames, ClearFilmAndNoFilmHaveNone) {
  EXPECT_TRUE(search(profile_of({}, 0.0, 120.0)).frames.empty());
  EXPECT_TRUE(search(profile_of({}, 0.0, 1.0)).frames.empty());
  FrameProfile none = profile_of({{2.0, 38.0}}, 0.0, 120.0);
  std::fill(none.film.begin(), none.film.end(), false);
  EXPECT_TRUE(search(none).frames.empty());
  EXPECT_TRUE(find_frames(profile_of({{2.0, 38.0}}, 0.0, 40.0), {}, usual_gap_mm).frames.empty());
}

// Dust, print or a scratch: dark over a few millimetres without straight borders.
TEST(FindFrames, AShortDarkPlaceIsNoFrame) {
  FrameProfile profile = profile_of({{50.0, 55.0}}, 0.0, 120.0);
  std::fill(profile.rises.begin(), profile.rises.end(), 0.0);
  std::fill(profile.falls.begin(), profile.falls.end(), 0.0);
  EXPECT_TRUE(search(profile).frames.empty());
}

TEST(FindFrames, GapsMayBeUneven) {
  const Spans truth{{2.0, 38.0}, {39.2, 75.2}, {78.4, 114.4}};
  const FrameSeries found = search(profile_of(truth, 0.0, 118.0));
  expect_frames(found, truth);
  EXPECT_NEAR(found.length_mm, 36.0, 1e-9);
  for (const FrameSpan& span : found.frames) {
    EXPECT_EQ(span.begin_border, 1.0);
    EXPECT_EQ(span.end_border, 1.0);
  }
}

// The camera winds on too little: the frames share a millimetre.
TEST(FindFrames, FramesMayOverlap) {
  const Spans truth{{2.0, 38.0}, {37.0, 73.0}, {75.0, 111.0}};
  expect_frames(search(profile_of(truth, 0.0, 118.0)), truth);
}

TEST(FindFrames, BlankFilmOfAnyLengthMayLieBetween) {
  for (const double blank_mm : {9.0, 40.0, 116.0}) {
    const Spans truth{{2.0, 38.0}, {38.0 + blank_mm, 74.0 + blank_mm}};
    SCOPED_TRACE(blank_mm);
    expect_frames(search(profile_of(truth, 0.0, 80.0 + blank_mm)), truth);
  }
}

// Full length is told though a part lies beyond the film; less than 2 mm of a frame tells nothing.
TEST(FindFrames, FramesMayBeCutByTheEndsOfTheFilm) {
  const Spans truth{{-20.0, 16.0}, {18.0, 54.0}, {56.0, 92.0}};
  expect_frames(search(profile_of(truth, 0.0, 80.0)), truth);
  const Spans sliver{{-34.5, 1.5}, {3.5, 39.5}};
  expect_frames(search(profile_of(sliver, 0.0, 44.0)), {{3.5, 39.5}});
}

TEST(FindFrames, TheCommonLengthIsFoundWithinItsKind) {
  for (const double length : {35.4, 36.0, 36.6}) {
    const Spans truth{{2.0, 2.0 + length}, {40.0, 40.0 + length}, {78.0, 78.0 + length}};
    const FrameSeries found = search(profile_of(truth, 0.0, 118.0));
    SCOPED_TRACE(length);
    EXPECT_NEAR(found.length_mm, length, 0.05);
    expect_frames(found, truth);
  }
}

TEST(FindFrames, HalfFramesArentTakenForWholeOnes) {
  Spans truth;
  for (int i = 0; i < 6; ++i) {
    truth.emplace_back(2.0 + 19.0 * i, 20.0 + 19.0 * i);
  }
  const FrameSeries found = search(profile_of(truth, 0.0, 118.0));
  expect_frames(found, truth);
  EXPECT_NEAR(found.length_mm, 18.0, 1e-9);
}

// A straight edge in the middle of every picture, as a doorway has it, cuts no frame in two:
// nothing clear lies beside it.
TEST(FindFrames, ALineInAPictureIsNoBorder) {
  const Spans truth{{2.0, 38.0}, {40.0, 76.0}, {78.0, 114.0}};
  FrameProfile profile = profile_of(truth, 0.0, 118.0);
  for (const double line_mm : {20.0, 58.0, 96.0}) {
    profile.rises[static_cast<std::size_t>(10.0 * line_mm)] = 1.0;
    profile.falls[static_cast<std::size_t>(10.0 * line_mm)] = 1.0;
  }
  expect_frames(search(profile), truth);
}

// 18 mm of picture at the film's end are half of a frame or a half frame: the usual one wins.
TEST(FindFrames, TheUsualKindWinsWhereNothingTells) {
  const FrameSeries found = search(profile_of({{-18.0, 18.0}}, 0.0, 60.0));
  EXPECT_GT(found.length_mm, 35.0);
  ASSERT_EQ(found.frames.size(), 1U);
  EXPECT_NEAR(found.frames[0].end_mm, 18.0, 0.05);
}

TEST(FindFrames, ScaleAndOriginDontMatter) {
  const Spans truth{{2.0, 38.0}, {40.4, 76.4}};
  for (const double pixels_per_mm : {5.0, 10.0, 20.0}) {
    for (const double shift : {-50.0, 0.0, 200.0}) {
      Spans shifted = truth;
      for (auto& [begin, end] : shifted) {
        begin += shift;
        end += shift;
      }
      SCOPED_TRACE(shift);
      expect_frames(search(profile_of(shifted, shift, 80.0 + shift, pixels_per_mm)), shifted,
                    0.5 / pixels_per_mm + 1e-9);
    }
  }
}

TEST(FindFrames, MirroredFilmGivesMirroredFrames) {
  const Spans truth{{-10.0, 26.0}, {29.0, 65.0}, {65.8, 101.8}};
  constexpr double film_mm = 110.0;
  Spans mirrored;
  for (auto span = truth.rbegin(); span != truth.rend(); ++span) {
    mirrored.emplace_back(film_mm - span->second, film_mm - span->first);
  }
  const FrameSeries there = search(profile_of(truth, 0.0, film_mm));
  const FrameSeries back = search(profile_of(mirrored, 0.0, film_mm));
  expect_frames(there, truth);
  expect_frames(back, mirrored);
  EXPECT_NEAR(there.score, back.score, 1e-9);
}

}  // namespace
}  // namespace fogline
