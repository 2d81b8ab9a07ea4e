// What the place, the light and the noise of a scan may not change.
#include "film/drawn_scan.h"
#include "film/find_film.h"

#include <algorithm>
#include <cmath>

#include <gtest/gtest.h>

namespace fogline {
namespace {

/// Two pictures on 80 mm of film; five pixels a millimetre.
drawn::Scan two_pictures() {
  drawn::Strip strip;
  strip.end_mm = 80.0;
  strip.frames = {strip.frame(2.0), strip.frame(41.0)};
  return drawn::scan_of(strip, 5.0);
}

Raster<float> mirrored(const Raster<float>& light, bool left_right) {
  Raster<float> result(light.width(), light.height());
  for (int y = 0; y < light.height(); ++y) {
    for (int x = 0; x < light.width(); ++x) {
      result.at(left_right ? light.width() - 1 - x : x, left_right ? y : light.height() - 1 - y) =
          light.at(x, y);
    }
  }
  return result;
}

/// Turned by a quarter clockwise: what lay left lies on top.
Raster<float> quarter(const Raster<float>& light) {
  Raster<float> result(light.height(), light.width());
  for (int y = 0; y < light.height(); ++y) {
    for (int x = 0; x < light.width(); ++x) {
      result.at(light.height() - 1 - y, x) = light.at(x, y);
    }
  }
  return result;
}

/// Its light and what is found on it: what all others are held against, worked out once.
const Raster<float>& plain_light() {
  static const Raster<float> light = drawn::light_of(two_pictures());
  return light;
}

const FilmLayout& plain_layout() {
  static const FilmLayout layout = find_film(drawn::grid_of(plain_light()), {});
  return layout;
}

/// Middles of the frames of a layout's only strip, stored pixels, as they come.
std::vector<PointPx> frame_middles(const FilmLayout& layout) {
  std::vector<PointPx> middles;
  for (const FilmStrip& strip : layout.strips) {
    for (const FilmFrame& frame : strip.frames) {
      middles.push_back(
          strip.map.scan_from_film({0.5 * (frame.along_begin_mm + frame.along_end_mm),
                                    0.5 * (frame.across_begin_mm + frame.across_end_mm)}));
    }
  }
  return middles;
}

void expect_same(const std::vector<PointPx>& found, const std::vector<PointPx>& wanted) {
  ASSERT_EQ(found.size(), wanted.size());
  // A place is told to half a pixel both times.
  for (std::size_t i = 0; i < found.size(); ++i) {
    EXPECT_NEAR(found[i].x, wanted[i].x, 1.0);
    EXPECT_NEAR(found[i].y, wanted[i].y, 1.0);
  }
}

TEST(FindFilmSymmetry, AMirroredScanGivesTheMirroredFilm) {
  const drawn::Scan scan = two_pictures();
  const Raster<float>& light = plain_light();
  const std::vector<PointPx> plain = frame_middles(plain_layout());
  ASSERT_EQ(plain.size(), 2U);
  for (const bool left_right : {true, false}) {
    std::vector<PointPx> wanted = plain;
    for (PointPx& at : wanted) {
      at = left_right ? PointPx{scan.width_px - at.x, at.y} : PointPx{at.x, scan.height_px - at.y};
    }
    if (left_right) {
      std::reverse(wanted.begin(), wanted.end());
    }
    SCOPED_TRACE(left_right);
    expect_same(frame_middles(find_film(drawn::grid_of(mirrored(light, left_right)), {})), wanted);
  }
}

TEST(FindFilmSymmetry, AQuarterTurnGivesTheTurnedFilm) {
  const drawn::Scan scan = two_pictures();
  std::vector<PointPx> wanted = frame_middles(plain_layout());
  for (PointPx& at : wanted) {
    at = {scan.height_px - at.y, at.x};
  }
  expect_same(frame_middles(find_film(drawn::grid_of(quarter(plain_light())), {})), wanted);
}

// Film is found on the logarithm of light: a lamp of a fiftieth the light changes nothing.
TEST(FindFilmSymmetry, TheLampsLightDoesntMatter) {
  drawn::Scan scan = two_pictures();
  const FilmLayout& bright = plain_layout();
  ASSERT_EQ(bright.strips.size(), 1U);
  for (const double light : {0.3, 0.02}) {
    scan.bare_light = light;
    const FilmLayout dim = find_film(drawn::grid_of(scan), {});
    ASSERT_EQ(dim.strips.size(), 1U);
    EXPECT_EQ(dim.strips[0].perforations.size(), bright.strips[0].perforations.size());
    expect_same(frame_middles(dim), frame_middles(bright));
  }
}

// "Under any monotone reading of the codes": gammas from a half to the double.
TEST(FindFilmSymmetry, TheToneCurveDoesntMatter) {
  const FilmLayout& linear = plain_layout();
  for (const float gamma : {0.5F, 2.0F}) {
    Raster<float> bent = plain_light();
    for (float& value : bent.samples()) {
      value = std::pow(value, gamma);
    }
    const FilmLayout layout = find_film(drawn::grid_of(bent), {});
    SCOPED_TRACE(gamma);
    ASSERT_EQ(layout.strips.size(), 1U);
    EXPECT_EQ(layout.strips[0].perforations.size(), linear.strips[0].perforations.size());
    expect_same(frame_middles(layout), frame_middles(linear));
  }
}

// A grid that averages two by two stored pixels speaks of stored pixels all the same.
TEST(FindFilmSymmetry, AReducedGridTellsStoredPixels) {
  const FilmLayout& whole = plain_layout();
  ScanGrid doubled = drawn::grid_of(plain_light());
  doubled.reduction = 2;
  const FilmLayout layout = find_film(doubled, {});
  ASSERT_TRUE(layout.pixels_per_mm && whole.pixels_per_mm);
  // Robust fits believe residuals up to a third of a stored pixel, whatever its size.
  EXPECT_NEAR(*layout.pixels_per_mm / *whole.pixels_per_mm, 2.0, 0.001);
  std::vector<PointPx> wanted = frame_middles(whole);
  for (PointPx& at : wanted) {
    at = {2.0 * at.x, 2.0 * at.y};
  }
  expect_same(frame_middles(layout), wanted);
}

// More noise may lose frames, never add one or put one where none was.
TEST(FindFilmSymmetry, NoiseInventsNoFrames) {
  drawn::Scan scan = two_pictures();
  for (const double grain : {0.08, 0.25}) {
    for (const std::uint32_t seed : {1U, 2U}) {
      scan.grain_density = grain;
      scan.seed = seed;
      for (const PointPx& middle : frame_middles(find_film(drawn::grid_of(scan), {}))) {
        const PointMm at = drawn::film_at(scan, scan.strips[0], middle.x, middle.y);
        EXPECT_LT(std::min(std::abs(at.along_mm - 20.0), std::abs(at.along_mm - 59.0)), 1.0)
            << grain << ' ' << seed;
      }
    }
  }
}

// The holes give the scale, whatever the file's tag says.
TEST(FindFilmSymmetry, AWrongTagChangesNothing) {
  const FilmLayout& plain = plain_layout();
  FindOptions options;
  options.tag_pixels_per_mm = 2.5 * two_pictures().pixels_per_mm;
  const FilmLayout tagged = find_film(drawn::grid_of(plain_light()), options);
  EXPECT_EQ(tagged.pixels_per_mm, plain.pixels_per_mm);
  expect_same(frame_middles(tagged), frame_middles(plain));
}

// Each film has its own tilt, base and frames, and they don't change each other's.
TEST(FindFilmSymmetry, TwoFilmsAreFoundAsIfAlone) {
  drawn::Scan both = two_pictures();
  drawn::Strip second = both.strips[0];
  second.base_density = 0.4;
  second.direction_deg = 1.0;
  second.frames = {second.frame(20.0)};
  second.origin.y += 44.0 * both.pixels_per_mm;
  both.height_px += static_cast<int>(46.0 * both.pixels_per_mm);
  both.strips.push_back(second);
  const FilmLayout layout = find_film(drawn::grid_of(both), {});
  ASSERT_EQ(layout.strips.size(), 2U);
  for (std::size_t i = 0; i < 2; ++i) {
    drawn::Scan alone = both;
    alone.strips = {both.strips[i]};
    const FilmLayout single = find_film(drawn::grid_of(alone), {});
    ASSERT_EQ(single.strips.size(), 1U);
    EXPECT_NEAR(layout.strips[i].map.rotation_deg(), both.strips[i].direction_deg, 0.1);
    ASSERT_EQ(layout.strips[i].frames.size(), single.strips[0].frames.size());
    FilmLayout of_both;
    of_both.strips = {layout.strips[i]};
    expect_same(frame_middles(of_both), frame_middles(single));
  }
}

}  // namespace
}  // namespace fogline
