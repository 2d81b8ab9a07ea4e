#include "film/strips/window_strips.h"

#include "film/drawn_finding.h"

#include <algorithm>
#include <cmath>

#include <gtest/gtest.h>

namespace fogline {
namespace {

constexpr double pixels_per_mm = 4.0;
/// A border may lie off by one of these scans' pixels and the blur of grain.
constexpr double border_mm = 0.25;

std::vector<FilmStrip> strips_in(const drawn::Scan& scan, const FindOptions& options) {
  return window_strips(drawn::finding_of(scan), drawn::grid_of(scan), options);
}

FindOptions tagged() {
  FindOptions options;
  options.tag_pixels_per_mm = pixels_per_mm;
  return options;
}

/// 120 film, 61.5 mm wide (ISO 732, from memory), with pictures 56 mm high.
drawn::Strip middle_film(const std::vector<double>& begins, double length_mm, double end_mm) {
  drawn::Strip strip;
  strip.perforated = false;
  strip.half_width_mm = 61.5 / 2.0;
  strip.end_mm = end_mm;
  for (const double begin : begins) {
    strip.frames.push_back({begin, begin + length_mm, -28.0, 28.0});
  }
  return strip;
}

/// 135 film behind a holder that shows `half_mm` of it to both sides of its middle.
drawn::Scan in_a_holder(const drawn::Strip& strip, double half_mm, double begin_mm, double end_mm) {
  drawn::Scan scan = drawn::scan_of(strip, pixels_per_mm);
  scan.surround_density = 4.0;
  const PointPx origin = scan.strips[0].origin;
  scan.window = BoxPx{origin.x + begin_mm * pixels_per_mm, origin.y - half_mm * pixels_per_mm,
                      (end_mm - begin_mm) * pixels_per_mm, 2.0 * half_mm * pixels_per_mm};
  return scan;
}

void expect_frames(const drawn::Scan& scan, const drawn::Strip& truth, const FilmStrip& found) {
  ASSERT_EQ(found.frames.size(), truth.frames.size());
  for (std::size_t i = 0; i < truth.frames.size(); ++i) {
    const PointPx begin = found.map.scan_from_film({found.frames[i].along_begin_mm, 0.0});
    const PointPx end = found.map.scan_from_film({found.frames[i].along_end_mm, 0.0});
    EXPECT_NEAR(drawn::film_at(scan, truth, begin.x, begin.y).along_mm,
                truth.frames[i].along_begin_mm, border_mm)
        << i;
    EXPECT_NEAR(drawn::film_at(scan, truth, end.x, end.y).along_mm, truth.frames[i].along_end_mm,
                border_mm)
        << i;
  }
}

TEST(WindowStrips, SquareAndLongPicturesOnMiddleFormatFilm) {
  for (const auto& [length, pitch] : {std::pair{56.0, 61.0}, {70.0, 74.0}}) {
    const drawn::Strip strip = middle_film({4.0, 4.0 + pitch}, length, 2.0 * pitch + 6.0);
    const drawn::Scan scan = drawn::scan_of(strip, pixels_per_mm);
    const std::vector<FilmStrip> strips = strips_in(scan, tagged());
    SCOPED_TRACE(length);
    ASSERT_EQ(strips.size(), 1U);
    EXPECT_EQ(strips[0].format, FilmFormat::f120);
    EXPECT_TRUE(strips[0].scale_known);
    EXPECT_EQ(strips[0].surround, Surround::bare_light);
    EXPECT_EQ(strips[0].bare_light.size(), 2U);
    EXPECT_NEAR(strips[0].across_end_mm - strips[0].across_begin_mm, 61.5, 0.5);
    expect_frames(scan, scan.strips[0], strips[0]);
  }
}

// Without a tag the pictures between clear margins tell that this is 120 film, and its width the
// scale to an outline's pixel.
TEST(WindowStrips, PicturesTellMiddleFormatFilmWithoutATag) {
  const drawn::Scan scan = drawn::scan_of(middle_film({4.0, 65.0}, 56.0, 128.0), pixels_per_mm);
  const std::vector<FilmStrip> strips = strips_in(scan, {});
  ASSERT_EQ(strips.size(), 1U);
  EXPECT_EQ(strips[0].format, FilmFormat::f120);
  EXPECT_NEAR(strips[0].map.pixels_per_mm(), pixels_per_mm, 0.01 * pixels_per_mm);
  EXPECT_EQ(strips[0].frames.size(), 2U);
}

// A piece of no film's width, and blank, is a strip of which nothing is said.
TEST(WindowStrips, APieceOfNoKnownWidthIsUnknownAndHasNoFrames) {
  drawn::Strip strip;
  strip.perforated = false;
  strip.half_width_mm = 22.0;
  strip.base_density = 0.4;
  const std::vector<FilmStrip> strips = strips_in(drawn::scan_of(strip, pixels_per_mm), tagged());
  ASSERT_EQ(strips.size(), 1U);
  EXPECT_EQ(strips[0].format, FilmFormat::unknown);
  EXPECT_TRUE(strips[0].frames.empty());
}

TEST(WindowStrips, NothingIsNoStrip) {
  drawn::Scan scan;
  scan.width_px = 240;
  scan.height_px = 160;
  EXPECT_TRUE(strips_in(scan, tagged()).empty());
  scan.surround_density = 4.0;
  EXPECT_TRUE(strips_in(scan, tagged()).empty());
}

drawn::Strip two_pictures() {
  drawn::Strip strip;
  strip.end_mm = 80.0;
  strip.frames = {strip.frame(2.0), strip.frame(41.0)};
  return strip;
}

// A holder shows a strip of 135 film without its holes; blank film in it has no frames.
TEST(WindowStrips, PicturesInAHoldersWindow) {
  const drawn::Scan scan = in_a_holder(two_pictures(), 12.3, 0.0, 80.0);
  const std::vector<FilmStrip> strips = strips_in(scan, tagged());
  ASSERT_EQ(strips.size(), 1U);
  EXPECT_EQ(strips[0].format, FilmFormat::f135);
  EXPECT_EQ(strips[0].surround, Surround::opaque);
  EXPECT_EQ(strips[0].window.size(), 4U);
  expect_frames(scan, scan.strips[0], strips[0]);
  drawn::Strip blank = two_pictures();
  blank.frames.clear();
  for (const std::uint32_t seed : {1U, 2U}) {
    drawn::Scan none = in_a_holder(blank, 12.3, 0.0, 80.0);
    none.seed = seed;
    none.grain_density = 0.03;
    for (const FilmStrip& film : strips_in(none, tagged())) {
      EXPECT_TRUE(film.frames.empty());
    }
  }
}

// The window is longer than the film: bare light beyond its end is kept as such, and no film.
TEST(WindowStrips, BareLightBeyondTheFilmsEndIsTold) {
  drawn::Scan scan = in_a_holder(two_pictures(), 12.3, 0.0, 95.0);
  scan.width_px += static_cast<int>(16.0 * pixels_per_mm);
  // Bare light behind the film's end, within the window.
  drawn::Strip bare = scan.strips[0];
  bare.frames.clear();
  bare.perforated = false;
  bare.base_density = 0.0;
  bare.begin_mm = 80.0;
  bare.end_mm = 100.0;
  scan.strips.push_back(bare);
  const std::vector<FilmStrip> strips = strips_in(scan, tagged());
  ASSERT_EQ(strips.size(), 1U);
  const PointPx end = strips[0].map.scan_from_film({strips[0].along_end_mm, 0.0});
  EXPECT_NEAR(drawn::film_at(scan, scan.strips[0], end.x, end.y).along_mm, 80.0, 0.7);
  ASSERT_EQ(strips[0].bare_light.size(), 1U);
  expect_frames(scan, scan.strips[0], strips[0]);
}

// A bar across the holder parts the window; both sides show one strip.
TEST(WindowStrips, WindowsInLineShowOneStrip) {
  drawn::Strip film = two_pictures();
  film.end_mm = 84.0;
  // Half frames, so that clear film shows within each window and not at its ends alone, where it
  // can't be told from bare light.
  film.frames = {film.frame(2.0, 18.0), film.frame(21.5, 18.0), film.frame(44.0, 18.0),
                 film.frame(63.5, 18.0)};
  drawn::Scan scan = in_a_holder(film, 12.3, 0.0, 84.0);
  drawn::Strip bar;
  bar.perforated = false;
  bar.base_density = 4.0;
  bar.origin = scan.strips[0].origin;
  bar.begin_mm = 41.0;
  bar.end_mm = 42.5;
  scan.strips.insert(scan.strips.begin(), bar);
  const std::vector<FilmStrip> strips = strips_in(scan, tagged());
  ASSERT_EQ(strips.size(), 1U);
  expect_frames(scan, scan.strips[1], strips[0]);
}

// An opening of one frame's size is the frame, though its borders are covered.
TEST(WindowStrips, AnOpeningOfAFramesSizeIsAFrame) {
  drawn::Strip strip = two_pictures();
  strip.frames = {strip.frame(20.0)};
  const std::vector<FilmStrip> strips = strips_in(in_a_holder(strip, 11.8, 20.4, 55.6), tagged());
  ASSERT_EQ(strips.size(), 1U);
  ASSERT_EQ(strips[0].frames.size(), 1U);
  EXPECT_NEAR(strips[0].frames[0].along_end_mm - strips[0].frames[0].along_begin_mm, 35.2, 1.0);
}

}  // namespace
}  // namespace fogline
