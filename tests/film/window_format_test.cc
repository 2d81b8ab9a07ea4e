#include "film/strips/window_format.h"

#include <algorithm>
#include <cmath>

#include <gtest/gtest.h>

namespace fogline {
namespace {

constexpr double pixels_per_mm = 20.0;

FilmWindow window_of(double length_mm, double width_mm, Surround surround) {
  FilmWindow window;
  window.length_px = length_mm * pixels_per_mm;
  window.width_px = width_mm * pixels_per_mm;
  window.surround = surround;
  return window;
}

FindOptions tagged(double tag = pixels_per_mm) {
  FindOptions options;
  options.tag_pixels_per_mm = tag;
  return options;
}

FilmFormat format_of(double length_mm, double width_mm, Surround surround) {
  return guess_format(window_of(length_mm, width_mm, surround), 1.0, tagged()).format;
}

// 120 film is 61.5 mm wide (ISO 732), sheets are about 100 x 125, 88 x 118 and 128 x 178 mm
// (ISO 1012), both from memory. 135 film would show its holes.
TEST(GuessFormat, OnBareLightByTheWholePiece) {
  EXPECT_EQ(format_of(180.0, 61.5, Surround::bare_light), FilmFormat::f120);
  EXPECT_EQ(format_of(70.0, 62.5, Surround::bare_light), FilmFormat::f120);
  EXPECT_EQ(format_of(125.4, 100.0, Surround::bare_light), FilmFormat::sheet);
  EXPECT_EQ(format_of(118.0, 88.0, Surround::bare_light), FilmFormat::sheet);
  EXPECT_EQ(format_of(178.0, 128.0, Surround::bare_light), FilmFormat::sheet);
  EXPECT_EQ(format_of(180.0, 58.0, Surround::bare_light), FilmFormat::unknown);
  EXPECT_EQ(format_of(140.0, 100.0, Surround::bare_light), FilmFormat::unknown);
  EXPECT_EQ(format_of(180.0, 34.975, Surround::bare_light), FilmFormat::unknown);
}

// A holder shows less of the film's width, never more than it: 24 to 35 mm, 56 to 61.5 mm.
TEST(GuessFormat, InAHolderByItsWindow) {
  EXPECT_EQ(format_of(230.0, 24.0, Surround::opaque), FilmFormat::f135);
  EXPECT_EQ(format_of(230.0, 34.9, Surround::opaque), FilmFormat::f135);
  EXPECT_EQ(format_of(180.0, 56.0, Surround::opaque), FilmFormat::f120);
  EXPECT_EQ(format_of(180.0, 61.0, Surround::opaque), FilmFormat::f120);
  EXPECT_EQ(format_of(120.0, 95.0, Surround::opaque), FilmFormat::sheet);
  EXPECT_EQ(format_of(230.0, 95.0, Surround::opaque), FilmFormat::unknown);
  EXPECT_EQ(format_of(400.0, 300.0, Surround::opaque), FilmFormat::unknown);
  EXPECT_EQ(format_of(20.0, 10.0, Surround::opaque), FilmFormat::unknown);
  EXPECT_EQ(format_of(80.0, 43.0, Surround::opaque), FilmFormat::unknown);
}

// The window is told in pixels of a picture that stands for several stored ones each.
TEST(GuessFormat, ScaleIsTheTagsInStoredPixels) {
  FilmWindow window = window_of(180.0, 61.5, Surround::bare_light);
  window.length_px /= 5.0;
  window.width_px /= 5.0;
  const FormatGuess guess = guess_format(window, 5.0, tagged());
  EXPECT_EQ(guess.format, FilmFormat::f120);
  EXPECT_EQ(guess.pixels_per_mm, pixels_per_mm);
  EXPECT_TRUE(guess.scale_known);
}

// Without a tag, or with one that no scan of film has, the usual width is all there is.
TEST(GuessFormat, WithoutAUsableTagTheScaleIsAGuess) {
  const FilmWindow window = window_of(180.0, 24.0, Surround::opaque);
  for (const FindOptions& options : {FindOptions{}, tagged(1.0), tagged(1000.0)}) {
    const FormatGuess guess = guess_format(window, 1.0, options);
    EXPECT_EQ(guess.format, FilmFormat::unknown);
    EXPECT_FALSE(guess.scale_known);
    EXPECT_NEAR(guess.pixels_per_mm, pixels_per_mm, 1e-9);
  }
}

// Cameras and editors write 72, 96 or 300 pixels an inch for want of better: a tag that makes a
// width of the piece that no film has tells nothing.
TEST(GuessFormat, ATagThatFitsNoFilmIsWrong) {
  constexpr double mm_per_inch = 25.4;
  for (const Surround surround : {Surround::opaque, Surround::bare_light, Surround::image_border}) {
    // A camera's picture of 6000 x 4000 pixels.
    const FilmWindow window = window_of(6000.0 / pixels_per_mm, 4000.0 / pixels_per_mm, surround);
    for (const double tag : {72.0, 96.0, 300.0}) {
      const FormatGuess guess = guess_format(window, 1.0, tagged(tag / mm_per_inch));
      EXPECT_FALSE(guess.scale_known) << tag;
      EXPECT_EQ(guess.format, FilmFormat::unknown) << tag;
    }
  }
  // 127 and 110 film have no name here, but their width is film's.
  for (const double width_mm : {46.0, 16.0}) {
    const FormatGuess guess =
        guess_format(window_of(120.0, width_mm, Surround::bare_light), 1.0, tagged());
    EXPECT_TRUE(guess.scale_known) << width_mm;
    EXPECT_EQ(guess.pixels_per_mm, pixels_per_mm) << width_mm;
  }
}

TEST(GuessFormat, SheetsAreToldByTheirShape) {
  EXPECT_EQ(sheet_width_mm(125.4 / 100.0), 100.0);
  EXPECT_EQ(sheet_width_mm(118.0 / 88.0), 88.0);
  EXPECT_EQ(sheet_width_mm(178.0 / 128.0), 128.0);
  EXPECT_FALSE(sheet_width_mm(1.0));
  EXPECT_FALSE(sheet_width_mm(1.3));
  EXPECT_FALSE(sheet_width_mm(1.5));
}

TEST(GuessFormat, WhatIsSaidIsBelieved) {
  FindOptions options;
  options.format = FilmFormat::f120;
  const FormatGuess glass =
      guess_format(window_of(180.0, 61.5, Surround::bare_light), 1.0, options);
  EXPECT_EQ(glass.format, FilmFormat::f120);
  EXPECT_NEAR(glass.pixels_per_mm, pixels_per_mm, 1e-9);
  const FormatGuess mask = guess_format(window_of(180.0, 56.0, Surround::opaque), 1.0, options);
  EXPECT_NEAR(mask.pixels_per_mm, pixels_per_mm, 1e-9);
  options.tag_pixels_per_mm = 30.0;
  EXPECT_EQ(guess_format(window_of(180.0, 30.0, Surround::opaque), 1.0, options).format,
            FilmFormat::f120);
}

FilmStrip strip_of(FilmFormat format, double length_mm, double width_mm) {
  FilmStrip film;
  film.format = format;
  film.along_end_mm = length_mm;
  film.across_begin_mm = -0.5 * width_mm;
  film.across_end_mm = 0.5 * width_mm;
  return film;
}

bool has_length(const std::vector<FrameKind>& kinds, double length_mm) {
  return std::any_of(kinds.begin(), kinds.end(), [&](const FrameKind& kind) {
    return std::abs(kind.length_mm - length_mm) <= kind.spread_mm;
  });
}

// Images of 135 film are 24 mm high, of 120 film 56 mm; a window may show less.
TEST(FrameHeight, IsTheFormatsOrWhatTheWindowShows) {
  EXPECT_EQ(frame_height_mm(strip_of(FilmFormat::f135, 200.0, 30.0)), 24.0);
  EXPECT_EQ(frame_height_mm(strip_of(FilmFormat::f135, 200.0, 22.0)), 22.0);
  EXPECT_EQ(frame_height_mm(strip_of(FilmFormat::f120, 200.0, 61.5)), 56.0);
  EXPECT_EQ(frame_height_mm(strip_of(FilmFormat::f120, 200.0, 54.0)), 54.0);
  EXPECT_LT(frame_height_mm(strip_of(FilmFormat::sheet, 125.0, 100.0)), 100.0);
}

TEST(FrameKinds, AreThoseOfTheFormat) {
  const FilmStrip small = strip_of(FilmFormat::f135, 200.0, 24.0);
  EXPECT_TRUE(has_length(frame_kinds(small, {}, 24.0), 36.0));
  EXPECT_TRUE(has_length(frame_kinds(small, {}, 24.0), 24.0));
  EXPECT_TRUE(has_length(frame_kinds(small, {}, 24.0), 18.0));
  EXPECT_FALSE(has_length(frame_kinds(small, {}, 24.0), 56.0));
  // 120 film: 645, 66, 67, 68 and 69, about 42, 56, 70, 77 and 84 mm.
  const FilmStrip middle = strip_of(FilmFormat::f120, 200.0, 61.5);
  for (const double length : {42.0, 56.0, 70.0, 77.0, 84.0}) {
    EXPECT_TRUE(has_length(frame_kinds(middle, {}, 56.0), length)) << length;
  }
  EXPECT_FALSE(has_length(frame_kinds(middle, {}, 56.0), 36.0));
  const std::vector<FrameKind> sheet =
      frame_kinds(strip_of(FilmFormat::sheet, 125.4, 100.0), {}, 95.0);
  ASSERT_EQ(sheet.size(), 1U);
  EXPECT_LT(sheet[0].length_mm, 125.4);
}

// Without a scale a frame's shape is known all the same: 3 to 2.
TEST(FrameKinds, FollowTheHeightWhereTheScaleIsAGuess) {
  FilmStrip film = strip_of(FilmFormat::unknown, 200.0, 30.0);
  film.scale_known = false;
  EXPECT_TRUE(has_length(frame_kinds(film, {}, 30.0), 45.0));
  EXPECT_FALSE(has_length(frame_kinds(film, {}, 30.0), 36.0));
}

TEST(FrameKinds, ALengthThatIsSaidIsTheOnlyOne) {
  FindOptions options;
  options.frame_mm = 32.0;
  for (const FilmFormat format : {FilmFormat::f135, FilmFormat::f120, FilmFormat::sheet}) {
    const std::vector<FrameKind> kinds = frame_kinds(strip_of(format, 200.0, 24.0), options, 24.0);
    ASSERT_EQ(kinds.size(), 1U);
    EXPECT_EQ(kinds[0].length_mm, 32.0);
  }
}

}  // namespace
}  // namespace fogline
