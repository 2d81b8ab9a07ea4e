#include "film/frames/frame_borders.h"

#include "film/drawn_profile.h"
#include "film/drawn_straight.h"

#include <gtest/gtest.h>

namespace fogline {
namespace {

using drawn::profile_of;
using drawn::Spans;

FrameSeries series_of(const Spans& spans, double length_mm = 36.0) {
  FrameSeries series;
  series.length_mm = length_mm;
  for (const auto& [begin, end] : spans) {
    series.frames.push_back({begin, end, 1.0, 1.0});
  }
  return series;
}

FilmStrip film_between(double begin_mm, double end_mm) {
  drawn::Strip strip;
  strip.begin_mm = begin_mm;
  strip.end_mm = end_mm;
  return drawn::known_film(strip);
}

constexpr AcrossExtent usual{-12.0, 12.0};

/// Frames of `spans`, searched for where they were drawn, on film from 0 to `end_mm`.
std::vector<FilmFrame> settled(const Spans& spans, double end_mm) {
  return settle_frames(series_of(spans), profile_of(spans, 0.0, end_mm), usual,
                       film_between(0.0, end_mm));
}

// A gate that sits off the middle by 0.3 mm, on three frames.
TEST(FrameAcross, FindsTheGateWhereItIs) {
  drawn::Strip strip;
  strip.perforated = false;
  strip.end_mm = 118.0;
  const Spans spans{{2.0, 38.0}, {40.0, 76.0}, {78.0, 114.0}};
  for (const auto& [begin, end] : spans) {
    strip.patches.push_back({{begin, end, -11.7, 12.3}, 0.6});
  }
  for (const std::uint32_t seed : {1U, 2U, 3U}) {
    const ExcessImage image =
        drawn::excess_of(strip, {.beyond_mm = 0.0, .grain_density = 0.02, .seed = seed});
    const AcrossExtent across = frame_across(image, series_of(spans), usual, 0.8, 0.02);
    EXPECT_NEAR(across.begin_mm, -11.7, 0.1);
    EXPECT_NEAR(across.end_mm, 12.3, 0.1);
  }
}

// Where nothing shows, or only what is too far off to be the gate, the usual places hold.
TEST(FrameAcross, KeepsTheUsualPlaceWithoutEvidence) {
  drawn::Strip strip;
  strip.perforated = false;
  strip.end_mm = 60.0;
  const FrameSeries series = series_of({{2.0, 38.0}});
  const drawn::Laid laid{.beyond_mm = 0.0};
  const AcrossExtent blank = frame_across(drawn::excess_of(strip, laid), series, usual, 0.8, 0.0);
  EXPECT_EQ(blank.begin_mm, usual.begin_mm);
  EXPECT_EQ(blank.end_mm, usual.end_mm);
  strip.patches = {{{2.0, 38.0, -10.0, 10.0}, 0.6}};
  const AcrossExtent small = frame_across(drawn::excess_of(strip, laid), series, usual, 0.8, 0.0);
  EXPECT_EQ(small.begin_mm, usual.begin_mm);
  EXPECT_EQ(small.end_mm, usual.end_mm);
}

// Light leaked beyond the gate of one frame of three: the median stands.
TEST(FrameAcross, TheStripsMedianCounts) {
  drawn::Strip strip;
  strip.perforated = false;
  strip.end_mm = 118.0;
  const Spans spans{{2.0, 38.0}, {40.0, 76.0}, {78.0, 114.0}};
  strip.patches = {{{2.0, 38.0, -11.8, 12.0}, 0.6},
                   {{40.0, 76.0, -11.8, 12.0}, 0.6},
                   {{78.0, 114.0, -11.8, 12.7}, 0.6}};
  const AcrossExtent across =
      frame_across(drawn::excess_of(strip, {.beyond_mm = 0.0}), series_of(spans), usual, 0.8, 0.0);
  EXPECT_NEAR(across.begin_mm, -11.8, 0.1);
  EXPECT_NEAR(across.end_mm, 12.0, 0.1);
}

TEST(SettleFrames, MovesBordersToWhereTheyShow) {
  const Spans truth{{2.0, 38.0}, {40.4, 76.4}};
  const Spans guessed{{2.5, 38.5}, {39.8, 75.8}};
  const std::vector<FilmFrame> frames = settle_frames(
      series_of(guessed), profile_of(truth, 0.0, 80.0), usual, film_between(0.0, 80.0));
  ASSERT_EQ(frames.size(), 2U);
  for (std::size_t i = 0; i < truth.size(); ++i) {
    EXPECT_NEAR(frames[i].along_begin_mm, truth[i].first, 1e-6);
    EXPECT_NEAR(frames[i].along_end_mm, truth[i].second, 1e-6);
    EXPECT_EQ(frames[i].across_begin_mm, usual.begin_mm);
    EXPECT_EQ(frames[i].across_end_mm, usual.end_mm);
    EXPECT_EQ(frames[i].clear_borders, 2);
    EXPECT_FALSE(frames[i].cut || frames[i].inferred || frames[i].overlaps);
  }
}

// Where one border drowns in the dark, the other and the common length tell.
TEST(SettleFrames, OneBorderAndTheLengthAreEnough) {
  for (const bool begin_hidden : {true, false}) {
    FrameProfile profile = profile_of({{2.0, 38.0}}, 0.0, 60.0);
    const std::size_t hidden = begin_hidden ? 20 : 380;
    profile.rises[hidden] = profile.falls[hidden] = profile.step[hidden] = 0.0;
    const std::vector<FilmFrame> frames =
        settle_frames(series_of({{2.4, 38.4}}), profile, usual, film_between(0.0, 60.0));
    ASSERT_EQ(frames.size(), 1U);
    EXPECT_NEAR(frames[0].along_begin_mm, 2.0, 1e-6);
    EXPECT_NEAR(frames[0].along_end_mm, 38.0, 1e-6);
    EXPECT_EQ(frames[0].clear_borders, 1);
  }
}

TEST(SettleFrames, DropsWhatNothingShows) {
  EXPECT_TRUE(settle_frames({}, profile_of({}, 0.0, 60.0), usual, film_between(0.0, 60.0)).empty());
  const std::vector<FilmFrame> frames =
      settle_frames(series_of({{2.0, 38.0}, {40.0, 76.0}}), profile_of({{2.0, 38.0}}, 0.0, 80.0),
                    usual, film_between(0.0, 80.0));
  ASSERT_EQ(frames.size(), 1U);
  EXPECT_NEAR(frames[0].along_begin_mm, 2.0, 1e-6);
}

TEST(SettleFrames, CutsFramesAtTheEndsOfTheFilm) {
  const std::vector<FilmFrame> frames = settled({{-20.0, 16.0}, {18.0, 54.0}, {56.0, 92.0}}, 80.0);
  ASSERT_EQ(frames.size(), 3U);
  EXPECT_TRUE(frames[0].cut);
  EXPECT_EQ(frames[0].along_begin_mm, 0.0);
  EXPECT_FALSE(frames[1].cut);
  EXPECT_TRUE(frames[2].cut);
  EXPECT_EQ(frames[2].along_end_mm, 80.0);
}

// A frame whose last 0.3 mm are missing is read as whole; one that lacks a millimetre isn't.
TEST(SettleFrames, ASliverMissingIsNoCut) {
  for (const double missing_mm : {0.3, 1.0}) {
    const Spans spans{{2.0, 38.0}};
    const std::vector<FilmFrame> frames =
        settle_frames(series_of(spans), profile_of(spans, 0.0, 40.0), usual,
                      film_between(0.0, 38.0 - missing_mm));
    ASSERT_EQ(frames.size(), 1U);
    EXPECT_EQ(frames[0].cut, missing_mm > 0.5);
  }
}

// A holder that covers 2 mm of the frames' height cuts them all.
TEST(SettleFrames, AHolderCutsAcross) {
  FilmStrip film = film_between(0.0, 80.0);
  film.across_end_mm = 10.0;
  const Spans spans{{2.0, 38.0}, {40.0, 76.0}};
  for (const FilmFrame& frame :
       settle_frames(series_of(spans), profile_of(spans, 0.0, 80.0), usual, film)) {
    EXPECT_TRUE(frame.cut);
    EXPECT_EQ(frame.across_end_mm, 10.0);
    EXPECT_EQ(frame.across_begin_mm, -12.0);
  }
}

TEST(SettleFrames, MarksThoseThatOverlap) {
  const std::vector<FilmFrame> frames = settled({{2.0, 38.0}, {37.0, 73.0}, {75.0, 111.0}}, 118.0);
  ASSERT_EQ(frames.size(), 3U);
  EXPECT_TRUE(frames[0].overlaps);
  EXPECT_TRUE(frames[1].overlaps);
  EXPECT_FALSE(frames[2].overlaps);
  // A border within another frame has no clear film beside it.
  EXPECT_EQ(frames[0].clear_borders, 1);
  EXPECT_EQ(frames[1].clear_borders, 1);
  EXPECT_EQ(frames[2].clear_borders, 2);
}

// Two blanks of 36 mm fill 78 mm evenly: gaps of 2 mm.
TEST(SettleFrames, InfersBlanksAtTheStripsPitch) {
  const std::vector<FilmFrame> frames = settled({{2.0, 38.0}, {116.0, 152.0}}, 156.0);
  ASSERT_EQ(frames.size(), 4U);
  const Spans truth{{2.0, 38.0}, {40.0, 76.0}, {78.0, 114.0}, {116.0, 152.0}};
  for (std::size_t i = 0; i < 4; ++i) {
    EXPECT_NEAR(frames[i].along_begin_mm, truth[i].first, 1e-6) << i;
    EXPECT_NEAR(frames[i].along_end_mm, truth[i].second, 1e-6) << i;
    EXPECT_EQ(frames[i].inferred, i == 1 || i == 2);
    EXPECT_EQ(frames[i].clear_borders, frames[i].inferred ? 0 : 2);
  }
}

// A gap too short for a frame is a gap, and nothing is inferred before the first frame or after the
// last.
TEST(SettleFrames, InfersNothingWhereNoFrameFits) {
  EXPECT_EQ(settled({{2.0, 38.0}, {58.0, 94.0}}, 100.0).size(), 2U);
  EXPECT_EQ(settled({{80.0, 116.0}}, 200.0).size(), 1U);
}

}  // namespace
}  // namespace fogline
