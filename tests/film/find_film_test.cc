#include "film/find_film.h"

#include "film/drawn_scan.h"

#include <cmath>
#include <vector>

#include <gtest/gtest.h>

namespace fogline {
namespace {

using drawn::Scan;
using drawn::Strip;

/// A border may lie off its true place by this: half a pixel of these coarse scans and the blur of
/// grain. Film is found for areas, not for edges.
constexpr double border_mm = 0.15;

/// A border of a found frame, in the drawn strip's millimetres.
double found_along(const Scan& scan, const Strip& truth, const FilmStrip& found, double along_mm) {
  const PointPx at = found.map.scan_from_film({along_mm, 0.0});
  return drawn::film_at(scan, truth, at.x, at.y).along_mm;
}

void expect_frames(const Scan& scan, const Strip& truth, const FilmStrip& found) {
  ASSERT_EQ(found.frames.size(), truth.frames.size());
  for (std::size_t i = 0; i < truth.frames.size(); ++i) {
    const FilmFrame& frame = found.frames[i];
    EXPECT_NEAR(found_along(scan, truth, found, frame.along_begin_mm),
                truth.frames[i].along_begin_mm, border_mm)
        << "frame " << i;
    EXPECT_NEAR(found_along(scan, truth, found, frame.along_end_mm), truth.frames[i].along_end_mm,
                border_mm)
        << "frame " << i;
    EXPECT_NEAR(frame.across_begin_mm, truth.frames[i].across_begin_mm, border_mm);
    EXPECT_NEAR(frame.across_end_mm, truth.frames[i].across_end_mm, border_mm);
    EXPECT_FALSE(frame.inferred);
    EXPECT_FALSE(frame.cut);
  }
}

void expect_strip(const Scan& scan, const Strip& truth, const FilmStrip& found) {
  EXPECT_EQ(found.format, FilmFormat::f135);
  // Half a percent: what the pitch must give (shrunken film differs by a few tenths).
  EXPECT_NEAR(found.map.pixels_per_mm() / scan.pixels_per_mm, 1.0, 0.005);
  EXPECT_EQ(found.perforations.size(), static_cast<std::size_t>(2 * truth.holes_a_row()));
  EXPECT_NEAR(found_along(scan, truth, found, found.along_begin_mm), truth.begin_mm, 0.4);
  EXPECT_NEAR(found_along(scan, truth, found, found.along_end_mm), truth.end_mm, 0.4);
  EXPECT_NEAR(found.across_end_mm - found.across_begin_mm, film_135::width_mm, 0.4);
  EXPECT_EQ(found.surround, Surround::bare_light);
  for (const Perforation& hole : found.perforations) {
    const PointMm at = drawn::film_at(scan, truth, hole.scan.x, hole.scan.y);
    const double pitches = (at.along_mm - truth.first_hole_mm) / film_135::pitch_mm;
    EXPECT_NEAR(pitches, std::round(pitches), 0.1 / film_135::pitch_mm);
    EXPECT_NEAR(std::abs(at.across_mm), film_135::row_across_mm, 0.1);
    EXPECT_TRUE(hole.whole);
  }
  expect_frames(scan, truth, found);
}

Strip three_frames() {
  Strip strip;
  strip.end_mm = 118.0;
  strip.frames = {strip.frame(2.0), strip.frame(39.2), strip.frame(78.4)};  // gaps 1.2 and 3.2 mm
  return strip;
}

void expect_nothing(const ScanGrid& grid) {
  const FilmLayout layout = find_film(grid, {});
  std::size_t frames = 0;
  std::size_t holes = 0;
  for (const FilmStrip& strip : layout.strips) {
    frames += strip.frames.size();
    holes += strip.perforations.size();
  }
  EXPECT_EQ(frames, 0U);
  EXPECT_EQ(holes, 0U);
}

TEST(FindFilm, FindsTwoRowsAndFramesWithUnevenGaps) {
  const Scan scan = drawn::scan_of(three_frames());
  const FilmLayout layout = find_film(drawn::grid_of(scan), {});
  EXPECT_EQ(layout.polarity, Polarity::negative);
  ASSERT_EQ(layout.strips.size(), 1U);
  ASSERT_TRUE(layout.pixels_per_mm.has_value());
  EXPECT_NEAR(*layout.pixels_per_mm, scan.pixels_per_mm, 0.005 * scan.pixels_per_mm);
  expect_strip(scan, scan.strips[0], layout.strips[0]);
}

TEST(FindFilm, FindsAStripTurnedEitherWay) {
  for (const double turn : {3.0, -3.0}) {
    Scan scan = drawn::scan_of(three_frames(), 8.0, 7.0);
    Strip& strip = scan.strips[0];
    strip.direction_deg = turn;
    // Turned about its middle.
    const double half_px = 0.5 * strip.end_mm * scan.pixels_per_mm;
    const double angle = turn * std::numbers::pi / 180.0;
    strip.origin.x += half_px * (1.0 - std::cos(angle));
    strip.origin.y -= half_px * std::sin(angle);
    const FilmLayout layout = find_film(drawn::grid_of(scan), {});
    ASSERT_EQ(layout.strips.size(), 1U) << turn;
    EXPECT_NEAR(layout.strips[0].map.rotation_deg(), turn, 0.05);
    expect_strip(scan, strip, layout.strips[0]);
  }
}

TEST(FindFilm, FindsFilmThatRunsDown) {
  Scan scan = drawn::scan_of(three_frames());
  std::swap(scan.width_px, scan.height_px);
  Strip& strip = scan.strips[0];
  strip.direction_deg = 90.0;
  strip.origin = {0.5 * scan.width_px, 3.0 * scan.pixels_per_mm};
  const FilmLayout layout = find_film(drawn::grid_of(scan), {});
  ASSERT_EQ(layout.strips.size(), 1U);
  EXPECT_NEAR(layout.strips[0].map.rotation_deg(), 0.0, 0.05);
  EXPECT_NEAR(std::abs(layout.strips[0].map.direction_deg()), 90.0, 0.05);
  expect_strip(scan, strip, layout.strips[0]);
}

TEST(FindFilm, FindsStripsFromTopToBottom) {
  Scan scan = drawn::scan_of(three_frames());
  Strip second = scan.strips[0];
  second.frames = {second.frame(3.0), second.frame(41.0), second.frame(79.5)};
  second.first_hole_mm = 3.1;
  second.origin.y += 40.0 * scan.pixels_per_mm;
  scan.height_px += static_cast<int>(40.0 * scan.pixels_per_mm);
  scan.strips.push_back(second);
  const FilmLayout layout = find_film(drawn::grid_of(scan), {});
  ASSERT_EQ(layout.strips.size(), 2U);
  for (std::size_t i = 0; i < 2; ++i) {
    expect_strip(scan, scan.strips[i], layout.strips[i]);
  }
}

// Between two pictures 78 mm apart one blank frame must lie.
TEST(FindFilm, InfersABlankFrameBetweenTwoOthers) {
  Strip strip = three_frames();
  strip.frames = {strip.frame(2.0), strip.frame(78.0)};
  const Scan scan = drawn::scan_of(strip);
  const FilmLayout layout = find_film(drawn::grid_of(scan), {});
  ASSERT_EQ(layout.strips.size(), 1U);
  const FilmStrip& found = layout.strips[0];
  ASSERT_EQ(found.frames.size(), 3U);
  EXPECT_FALSE(found.frames[0].inferred);
  EXPECT_TRUE(found.frames[1].inferred);
  EXPECT_FALSE(found.frames[2].inferred);
  EXPECT_NEAR(found_along(scan, scan.strips[0], found, found.frames[1].along_begin_mm), 40.0, 0.3);
  EXPECT_NEAR(found_along(scan, scan.strips[0], found, found.frames[1].along_end_mm), 76.0, 0.3);
}

TEST(FindFilm, TellsFramesThatOverlap) {
  Strip strip = three_frames();
  strip.frames = {strip.frame(2.0), strip.frame(37.0), strip.frame(75.0)};
  const Scan scan = drawn::scan_of(strip);
  const FilmLayout layout = find_film(drawn::grid_of(scan), {});
  ASSERT_EQ(layout.strips.size(), 1U);
  const FilmStrip& found = layout.strips[0];
  expect_frames(scan, scan.strips[0], found);
  ASSERT_EQ(found.frames.size(), 3U);
  EXPECT_TRUE(found.frames[0].overlaps);
  EXPECT_TRUE(found.frames[1].overlaps);
  EXPECT_FALSE(found.frames[2].overlaps);
}

TEST(FindFilm, FindsHalfFrames) {
  Strip strip = three_frames();
  strip.frames.clear();
  for (int i = 0; i < 6; ++i) {
    strip.frames.push_back(strip.frame(2.0 + 19.0 * i, 17.5));
  }
  const Scan scan = drawn::scan_of(strip);
  const FilmLayout layout = find_film(drawn::grid_of(scan), {});
  ASSERT_EQ(layout.strips.size(), 1U);
  expect_frames(scan, scan.strips[0], layout.strips[0]);
}

// A frame of which the image border cuts a third away.
TEST(FindFilm, TellsACutFrame) {
  Scan scan = drawn::scan_of(three_frames());
  scan.width_px -= static_cast<int>((3.0 + 118.0 - 103.0) * scan.pixels_per_mm);
  const FilmLayout layout = find_film(drawn::grid_of(scan), {});
  ASSERT_EQ(layout.strips.size(), 1U);
  const FilmStrip& found = layout.strips[0];
  ASSERT_EQ(found.frames.size(), 3U);
  EXPECT_FALSE(found.frames[1].cut);
  EXPECT_TRUE(found.frames[2].cut);
  EXPECT_NEAR(found_along(scan, scan.strips[0], found, found.frames[2].along_end_mm), 103.0, 0.4);
}

// Film dense from edge to edge at the end of a strip is a leader, not a picture.
TEST(FindFilm, FindsTheFoggedLeader) {
  Strip strip = three_frames();
  strip.frames = {strip.frame(41.0), strip.frame(79.0)};
  strip.patches = {{{0.0, 32.0, -18.0, 18.0}, 2.0}};
  const Scan scan = drawn::scan_of(strip);
  const FilmLayout layout = find_film(drawn::grid_of(scan), {});
  ASSERT_EQ(layout.strips.size(), 1U);
  const FilmStrip& found = layout.strips[0];
  ASSERT_EQ(found.leaders.size(), 1U);
  // Beyond its last perforation a leader as dense as a holder passes for one.
  const double hole_end_mm = strip.first_hole_mm - film_135::hole_along_mm / 2.0;
  const double begin = found_along(scan, scan.strips[0], found, found.leaders[0].along_begin_mm);
  EXPECT_GT(begin, -border_mm);
  EXPECT_LT(begin, hole_end_mm + border_mm);
  EXPECT_NEAR(found_along(scan, scan.strips[0], found, found.leaders[0].along_end_mm), 32.0, 1.0);
  expect_frames(scan, scan.strips[0], found);
}

// The first strip of a roll may be leader for the most part; its width is film all the same.
TEST(FindFilm, FindsAStripThatIsMostlyLeader) {
  Strip strip = three_frames();
  strip.frames = {strip.frame(80.0)};
  strip.patches = {{{0.0, 70.0, -18.0, 18.0}, 2.0}};
  const Scan scan = drawn::scan_of(strip);
  const FilmLayout layout = find_film(drawn::grid_of(scan), {});
  ASSERT_EQ(layout.strips.size(), 1U);
  const FilmStrip& found = layout.strips[0];
  EXPECT_NEAR(found.across_begin_mm, -film_135::width_mm / 2.0, 0.2);
  EXPECT_NEAR(found.across_end_mm, film_135::width_mm / 2.0, 0.2);
  ASSERT_EQ(found.leaders.size(), 1U);
  EXPECT_NEAR(found_along(scan, scan.strips[0], found, found.leaders[0].along_end_mm), 70.0, 1.0);
  expect_frames(scan, scan.strips[0], found);
}

// Through a holder that shows 24.4 mm of the film's width and none of its holes, by the file's
// resolution.
TEST(FindFilm, FindsFramesInAHoldersWindow) {
  Scan scan = drawn::scan_of(three_frames());
  scan.surround_density = 4.0;
  const double half_px = 12.2 * scan.pixels_per_mm;
  const double middle_px = scan.strips[0].origin.y;
  scan.window = BoxPx{3.0 * scan.pixels_per_mm, middle_px - half_px, 118.0 * scan.pixels_per_mm,
                      2.0 * half_px};
  FindOptions options;
  options.tag_pixels_per_mm = scan.pixels_per_mm;
  const FilmLayout layout = find_film(drawn::grid_of(scan), options);
  ASSERT_EQ(layout.strips.size(), 1U);
  EXPECT_EQ(layout.strips[0].format, FilmFormat::f135);
  EXPECT_TRUE(layout.strips[0].perforations.empty());
  ASSERT_EQ(layout.strips[0].frames.size(), 3U);
  for (std::size_t i = 0; i < 3; ++i) {
    const FilmFrame& frame = layout.strips[0].frames[i];
    const FilmExtent& truth = scan.strips[0].frames[i];
    EXPECT_NEAR(found_along(scan, scan.strips[0], layout.strips[0], frame.along_begin_mm),
                truth.along_begin_mm, border_mm);
    EXPECT_NEAR(found_along(scan, scan.strips[0], layout.strips[0], frame.along_end_mm),
                truth.along_end_mm, border_mm);
  }
}

TEST(FindFilm, TellsAnInvertedScan) {
  const Scan scan = drawn::scan_of(three_frames());
  Raster<float> light = drawn::light_of(scan);
  for (float& value : light.samples()) {
    const float root = 1.0F - std::sqrt(std::clamp(value, 0.0F, 1.0F));
    value = root * root;
  }
  EXPECT_EQ(find_film(drawn::grid_of(light), {}).polarity, Polarity::inverted);
}

TEST(FindFilm, FindsNothingWhereNothingIs) {
  Scan scan;
  scan.width_px = 320;
  scan.height_px = 240;
  scan.grain_density = 0.0;
  expect_nothing(drawn::grid_of(scan));  // bare light
  scan.surround_density = 5.0;
  expect_nothing(drawn::grid_of(scan));  // no light
  scan.surround_density = 0.6;
  scan.grain_density = 0.1;
  expect_nothing(drawn::grid_of(scan));  // noise
  SeededNoise noise(3);
  Raster<float> wild(320, 240);
  for (float& value : wild.samples()) {
    value = static_cast<float>(noise.uniform());
  }
  expect_nothing(drawn::grid_of(wild));
}

TEST(FindFilm, StandsTheSmallestScans) {
  for (const auto& [width, height] : {std::pair{1, 1}, {2, 1}, {1, 50}, {7, 5}, {3, 400}}) {
    expect_nothing(drawn::grid_of(Raster<float>(width, height, 1, 0.4F)));
  }
}

// A smooth picture that fills the scan, without film's borders.
TEST(FindFilm, FindsNoFramesInAPositivePicture) {
  Raster<float> light(350, 230);
  for (int y = 0; y < 230; ++y) {
    for (int x = 0; x < 350; ++x) {
      light.at(x, y) = static_cast<float>(
          0.7 * transmittance_from_density(drawn::picture_density(0.1 * x, 0.1 * y, 0.4)));
    }
  }
  expect_nothing(drawn::grid_of(light));
}

}  // namespace
}  // namespace fogline
