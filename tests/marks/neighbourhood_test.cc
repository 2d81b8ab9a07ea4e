#include "marks/neighbourhood.h"

#include "marks/noise_image.h"

#include <gtest/gtest.h>

namespace fogline {
namespace {

/// Density that grows from 0 on the left by 0.01 a pixel, 10 pixels a millimetre.
MarkTile ramp_tile() {
  MarkTile tile;
  tile.extent = {0.0, 10.0, -5.0, 5.0};
  tile.pixels_per_mm = 10.0;
  tile.density = cv::Mat1f(100, 100);
  for (int y = 0; y < 100; ++y) {
    for (int x = 0; x < 100; ++x) {
      tile.density(y, x) = 0.01F * static_cast<float>(x);
    }
  }
  tile.usable = all_of(tile.density);
  return tile;
}

const cv::Rect middle_box(45, 45, 10, 10);

TEST(RangeRound, LeavesOutTheOutermostTwentieths) {
  // Columns 25 to 74: 0.25 to 0.74.
  const DensityRange range = range_round(ramp_tile(), middle_box, 2.0);
  EXPECT_NEAR(range.low, 0.25 + 0.05 * 0.5, 0.015);
  EXPECT_NEAR(range.high, 0.75 - 0.05 * 0.5, 0.015);
}

TEST(RangeRound, ReachesAsFarAsAsked) {
  const DensityRange near = range_round(ramp_tile(), middle_box, 0.5);
  const DensityRange far = range_round(ramp_tile(), middle_box, 3.0);
  EXPECT_LT(near.high - near.low, 0.22);
  EXPECT_GT(far.high - far.low, 0.55);
}

TEST(RangeRound, TheMarkItselfDoesntCount) {
  MarkTile tile = ramp_tile();
  const DensityRange before = range_round(tile, middle_box, 2.0);
  tile.density(middle_box).setTo(3.0F);
  const DensityRange with_mark = range_round(tile, middle_box, 2.0);
  EXPECT_EQ(with_mark.low, before.low);
  EXPECT_EQ(with_mark.high, before.high);
}

TEST(RangeRound, WhatIsntUsableDoesntCount) {
  MarkTile tile = ramp_tile();
  tile.usable.colRange(60, 100).setTo(0);
  EXPECT_LT(range_round(tile, middle_box, 2.0).high, 0.60);
  EXPECT_NEAR(range_round(tile, middle_box, 2.0).low, 0.27, 0.015);
}

// At the tile's border the neighbourhood is what there is of it.
TEST(RangeRound, EndsWithTheTile) {
  const DensityRange range = range_round(ramp_tile(), {0, 0, 5, 5}, 2.0);
  EXPECT_NEAR(range.low, 0.01, 0.015);
  EXPECT_NEAR(range.high, 0.24, 0.015);
}

TEST(RangeRound, WithoutUsableFilmItIsEmpty) {
  MarkTile tile = ramp_tile();
  tile.usable.setTo(0);
  const DensityRange range = range_round(tile, middle_box, 2.0);
  EXPECT_EQ(range.low, 0.0);
  EXPECT_EQ(range.high, 0.0);
}

TEST(BeyondRange, SpeckOfSkyLiesInThePicturesRange) {
  const DensityRange range{0.3, 1.2};
  EXPECT_LE(beyond_range(range, 1.2, 0.8), 0.0);
  EXPECT_NEAR(beyond_range(range, 2.2, 1.0), 1.0, 1e-12);
  EXPECT_NEAR(beyond_range(range, 0.1, -0.4), 0.5, 1e-12);
  EXPECT_LT(beyond_range(range, 0.5, -0.4), 0.0);
}

// On even film the whole contrast lies beyond, be it up or down.
TEST(BeyondRange, IsOneOnEvenFilm) {
  const DensityRange even{1.0, 1.0};
  EXPECT_NEAR(beyond_range(even, 1.7, 0.7), 1.0, 1e-12);
  EXPECT_NEAR(beyond_range(even, 0.6, -0.4), 1.0, 1e-12);
}

FilmStrip two_frames() {
  FilmStrip film;
  film.format = FilmFormat::f135;
  film.frames = {{0.0, 36.0, -12.0, 12.0}, {38.0, 74.0, -12.0, 12.0}};
  return film;
}

TEST(InPicture, OnlyGapsAndRebateAreSurelyUnexposed) {
  const FilmStrip film = two_frames();
  EXPECT_TRUE(in_picture(film, {10.0, 0.0}));
  EXPECT_FALSE(in_picture(film, {37.0, 0.0}));
  EXPECT_FALSE(in_picture(film, {10.0, 16.0}));
  EXPECT_FALSE(in_picture(film, {10.0, -16.0}));
  // Beyond the last frame there may be one that wasn't found.
  EXPECT_TRUE(in_picture(film, {80.0, 0.0}));
  EXPECT_TRUE(in_picture(film, {-5.0, 0.0}));
}

// A border is known to some tenths of a millimetre.
TEST(InPicture, BordersBelongToThePicture) {
  const FilmStrip film = two_frames();
  EXPECT_TRUE(in_picture(film, {36.3, 0.0}));
  EXPECT_TRUE(in_picture(film, {37.7, 0.0}));
  EXPECT_TRUE(in_picture(film, {10.0, 12.3}));
}

TEST(InPicture, WithoutFramesItMayBeEverywhere) {
  FilmStrip film;
  EXPECT_TRUE(in_picture(film, {10.0, 16.0}));
  // The rows of perforations of 135 film carry none even so.
  film.format = FilmFormat::f135;
  EXPECT_TRUE(in_picture(film, {10.0, 5.0}));
  EXPECT_FALSE(in_picture(film, {10.0, 16.0}));
}

}  // namespace
}  // namespace fogline
