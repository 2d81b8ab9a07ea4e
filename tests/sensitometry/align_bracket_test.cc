#include "sensitometry/align_bracket.h"

#include <algorithm>
#include <numeric>

#include <gtest/gtest.h>

namespace fogline {
namespace {

const std::vector<double> ramp{-4, -3, -2, -1, 0, 1, 2, 3};

double density_of(double stops) {
  return stops < -3.5 ? 0.03 : 0.17 * (stops + 3.7);
}

/// Frames of a strip in the order of the exposures.
std::vector<BracketFrame> frames_of(const std::vector<double>& stops, int strip = 0) {
  std::vector<BracketFrame> frames;
  for (const double stop : stops) {
    frames.push_back({strip, density_of(stop), 0.005, 0.02});
  }
  return frames;
}

std::vector<int> counting(int count) {
  std::vector<int> numbers(static_cast<std::size_t>(count));
  std::iota(numbers.begin(), numbers.end(), 0);
  return numbers;
}

TEST(AlignBracket, FollowsTheStrip) {
  const auto found = align_bracket(ramp, frames_of(ramp), 0.1);
  ASSERT_TRUE(found);
  EXPECT_FALSE(found->ambiguity);
  EXPECT_EQ(found->exposure_of_frame, counting(8));
}

TEST(AlignBracket, TurnsAStripRound) {
  std::vector<BracketFrame> frames = frames_of(ramp);
  std::reverse(frames.begin(), frames.end());
  const auto found = align_bracket(ramp, frames, 0.1);
  std::vector<int> expected = counting(8);
  std::reverse(expected.begin(), expected.end());
  EXPECT_EQ(found->exposure_of_frame, expected);
  EXPECT_TRUE(found->turned_of_frame.front());
}

TEST(AlignBracket, TurnsEachPieceOfFilmByItself) {
  std::vector<BracketFrame> frames = frames_of({-4, -3, -2, -1}, 1);
  std::vector<BracketFrame> second = frames_of({3, 2, 1, 0}, 2);
  frames.insert(frames.end(), second.begin(), second.end());
  const auto found = align_bracket(ramp, frames, 0.1);
  EXPECT_EQ(found->exposure_of_frame, (std::vector<int>{0, 1, 2, 3, 7, 6, 5, 4}));
  EXPECT_FALSE(found->ambiguity);
}

TEST(AlignBracket, TakesGapsAndRepeats) {
  const std::vector<double> stops{-3, 0, 0, 2, -1};
  const auto found = align_bracket(stops, frames_of(stops), 0.1);
  EXPECT_EQ(found->exposure_of_frame, counting(5));
}

TEST(AlignBracket, LeavesPicturesOut) {
  std::vector<BracketFrame> frames{{0, 0.6, 0.005, 1.1}, {0, 0.4, 0.005, 0.9}};
  const std::vector<BracketFrame> bracket = frames_of(ramp);
  frames.insert(frames.end(), bracket.begin(), bracket.end());
  frames.push_back({0, 0.5, 0.005, 1.0});
  const auto found = align_bracket(ramp, frames, 0.1);
  EXPECT_EQ(found->exposure_of_frame, (std::vector<int>{-1, -1, 0, 1, 2, 3, 4, 5, 6, 7, -1}));
}

TEST(AlignBracket, MissesOnlyTheLeastExposed) {
  std::vector<BracketFrame> frames = frames_of(ramp);
  frames.erase(frames.begin());
  EXPECT_EQ(align_bracket(ramp, frames, 0.1)->exposure_of_frame,
            (std::vector<int>{1, 2, 3, 4, 5, 6, 7}));
  std::reverse(frames.begin(), frames.end());
  EXPECT_EQ(align_bracket(ramp, frames, 0.1)->exposure_of_frame,
            (std::vector<int>{7, 6, 5, 4, 3, 2, 1}));
}

TEST(AlignBracket, SaysWhatItCantTell) {
  // Four exposures of which two frames more follow the same way.
  const std::vector<double> stops{-2, -1, 0, 1};
  const auto found = align_bracket(stops, frames_of({-3, -2, -1, 0, 1, 2}), 0.1);
  ASSERT_TRUE(found);
  EXPECT_EQ(found->ambiguity, fact_of(Unknown::bracket_fits_shifted));
  // Told the first frame, nothing is open.
  EXPECT_FALSE(align_bracket(stops, frames_of({-3, -2, -1, 0, 1, 2}), 0.1, 1)->ambiguity);
}

TEST(AlignBracket, RefusesWhatDoesntRise) {
  const std::vector<BracketFrame> level(8, BracketFrame{0, 0.5, 0.005, 0.02});
  EXPECT_EQ(align_bracket(ramp, level, 0.1).why().kind, Unknown::bracket_not_rising);
  EXPECT_EQ(align_bracket(ramp, {}, 0.1).why().kind, Unknown::no_bracket_frame);
}

}  // namespace
}  // namespace fogline
