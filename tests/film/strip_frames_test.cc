#include "film/frames/strip_frames.h"

#include "film/drawn_scan.h"
#include "film/drawn_straight.h"

#include <gtest/gtest.h>

namespace fogline {
namespace {

/// Half a spot of 0.1 mm, half a pixel of these scans, and the blur of both.
constexpr double border_mm = 0.15;

/// The strip of a scan with known holes, its extent and frames found.
FilmStrip found_on(const drawn::Scan& scan, const FindOptions& options = {}) {
  FilmStrip film = drawn::known_film(scan, scan.strips.front());
  find_frames_on_perforated(film, drawn::grid_of(scan), options);
  return film;
}

void expect_frames(const FilmStrip& film, const drawn::Strip& truth) {
  ASSERT_EQ(film.frames.size(), truth.frames.size());
  for (std::size_t i = 0; i < truth.frames.size(); ++i) {
    EXPECT_NEAR(film.frames[i].along_begin_mm, truth.frames[i].along_begin_mm, border_mm) << i;
    EXPECT_NEAR(film.frames[i].along_end_mm, truth.frames[i].along_end_mm, border_mm) << i;
    EXPECT_NEAR(film.frames[i].across_begin_mm, truth.frames[i].across_begin_mm, border_mm) << i;
    EXPECT_NEAR(film.frames[i].across_end_mm, truth.frames[i].across_end_mm, border_mm) << i;
  }
}

// Gaps of 0.8 to 4 mm, drawn; two pictures a strip.
TEST(FramesOnPerforated, LieWhereTheyWereDrawn) {
  for (std::uint32_t seed = 1; seed <= 3; ++seed) {
    SeededNoise draw(seed);
    drawn::Strip strip;
    const double first = draw.uniform(1.0, 4.0);
    const double second = first + 36.0 + draw.uniform(0.8, 4.0);
    strip.frames = {strip.frame(first), strip.frame(second)};
    strip.end_mm = second + 36.0 + draw.uniform(1.0, 4.0);
    strip.base_density = draw.uniform(0.1, 0.45);
    drawn::Scan scan = drawn::scan_of(strip, 6.0);
    scan.seed = seed;
    scan.bare_light = draw.uniform(0.1, 0.95);
    const FilmStrip film = found_on(scan);
    SCOPED_TRACE(seed);
    expect_frames(film, strip);
    EXPECT_NEAR(film.clear_log_light, strip.base_density, 0.01);
    EXPECT_GT(film.clear_rebate_share, 0.95);
    EXPECT_NEAR(film.along_end_mm, strip.end_mm, 0.3);
  }
}

// Blank film stays blank however coarse its grain.
TEST(FramesOnPerforated, GrainIsNeverAFrame) {
  drawn::Strip blank;
  blank.end_mm = 80.0;
  for (const double grain : {0.03, 0.1, 0.2}) {
    for (const std::uint32_t seed : {1U, 2U}) {
      drawn::Scan scan = drawn::scan_of(blank, 6.0);
      scan.grain_density = grain;
      scan.seed = seed;
      EXPECT_TRUE(found_on(scan).frames.empty()) << grain << ' ' << seed;
    }
  }
}

// What the user says of the camera counts: pictures of 32 mm.
TEST(FramesOnPerforated, AreAsLongAsIsSaid) {
  drawn::Strip strip;
  strip.end_mm = 76.0;
  strip.frames = {strip.frame(3.0, 32.0), strip.frame(38.0, 32.0)};
  FindOptions options;
  options.frame_mm = 32.0;
  expect_frames(found_on(drawn::scan_of(strip, 6.0), options), strip);
}

// Fogged film is dark from edge to edge; only the picture after it is one.
TEST(FramesOnPerforated, ALeaderIsNoFrame) {
  drawn::Strip strip;
  strip.end_mm = 90.0;
  strip.frames = {strip.frame(51.0)};
  strip.patches = {{{-1.0, 40.0, -18.0, 18.0}, 1.2}};
  const FilmStrip film = found_on(drawn::scan_of(strip, 6.0));
  ASSERT_EQ(film.leaders.size(), 1U);
  EXPECT_NEAR(film.leaders[0].along_end_mm, 40.0, 1.0);
  expect_frames(film, strip);
}

}  // namespace
}  // namespace fogline
