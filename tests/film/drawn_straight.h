// Drawn film laid straight: what the stages behind the map read, without a map's own error.
#pragma once

#include "base/seeded_noise.h"
#include "film/drawn_film.h"
#include "film/frames/frame_profile.h"
#include "film/straight_strip.h"

#include <cmath>
#include <limits>

namespace fogline::drawn {

/// How a strip is laid straight.
struct Laid {
  double pixels_per_mm = 10.0;
  /// Surroundings in sight on all sides.
  double beyond_mm = 3.0;
  double bare_light = 0.8;
  double surround_density = 0.0;
  double grain_density = 0.0;
  /// Log light that the lamp loses a hundred millimetres of film.
  double lamp_fall = 0.0;
  std::uint32_t seed = 1;
};

inline FilmExtent extent_of(const Strip& strip, double beyond_mm) {
  const double half = strip.half_width_mm + beyond_mm;
  return {strip.begin_mm - beyond_mm, strip.end_mm + beyond_mm, -half, half};
}

inline StraightStrip straight_of(const Strip& strip, const Laid& laid) {
  StraightStrip result;
  result.extent = extent_of(strip, laid.beyond_mm);
  result.pixels_per_mm = laid.pixels_per_mm;
  const auto pixels = [&](double mm) {
    return static_cast<int>(std::lround(mm * laid.pixels_per_mm));
  };
  const int width = pixels(result.extent.along_end_mm - result.extent.along_begin_mm);
  const int height = pixels(result.extent.across_end_mm - result.extent.across_begin_mm);
  result.light = Raster<float>(width, height);
  result.clipped = Raster<std::uint8_t>(width, height);
  SeededNoise noise(laid.seed);
  for (int y = 0; y < height; ++y) {
    for (int x = 0; x < width; ++x) {
      const PointMm at{result.along_mm(x), result.across_mm(y)};
      const double density = strip_density(strip, at).value_or(laid.surround_density) +
                             laid.lamp_fall * at.along_mm / 100.0 +
                             noise.normal(laid.grain_density);
      result.light.at(x, y) =
          static_cast<float>(laid.bare_light * transmittance_from_density(density));
    }
  }
  return result;
}

/// Density above clear film, unknown off the film: what frames are looked for in.
inline ExcessImage excess_of(const Strip& strip, const Laid& laid) {
  const FilmExtent extent = extent_of(strip, laid.beyond_mm);
  ExcessImage image;
  image.pixels_per_mm = laid.pixels_per_mm;
  image.along_begin_mm = extent.along_begin_mm;
  image.across_begin_mm = extent.across_begin_mm;
  const auto pixels = [&](double mm) {
    return static_cast<int>(std::lround(mm * laid.pixels_per_mm));
  };
  image.excess = cv::Mat1f(pixels(extent.across_end_mm - extent.across_begin_mm),
                           pixels(extent.along_end_mm - extent.along_begin_mm));
  SeededNoise noise(laid.seed);
  for (int y = 0; y < image.excess.rows; ++y) {
    for (int x = 0; x < image.excess.cols; ++x) {
      const PointMm at{image.along_mm(x), extent.across_begin_mm + (y + 0.5) / laid.pixels_per_mm};
      const std::optional<double> density = strip_density(strip, at);
      image.excess(y, x) =
          density
              ? static_cast<float>(*density - strip.base_density + noise.normal(laid.grain_density))
              : std::numeric_limits<float>::quiet_NaN();
    }
  }
  return image;
}

/// The drawn strip as the search for perforations would hand it on: every hole at its true place,
/// no extent, no frames.
inline FilmStrip known_film(const Scan& scan, const Strip& strip) {
  FilmStrip film;
  film.format = FilmFormat::f135;
  film.map = FilmMap::straight(strip.origin, strip.direction_deg, scan.pixels_per_mm);
  for (const int row : {-1, +1}) {
    for (int k = 0; k < strip.holes_a_row(); ++k) {
      Perforation hole;
      hole.row = row;
      hole.film = {strip.first_hole_mm + k * film_135::pitch_mm, row * film_135::row_across_mm};
      hole.scan = scan_at(scan, strip, hole.film);
      hole.along_mm = film_135::hole_along_mm;
      hole.across_mm = film_135::hole_across_mm;
      film.perforations.push_back(hole);
    }
  }
  return film;
}

/// A strip as if its extent were known too.
inline FilmStrip known_film(const Strip& strip) {
  Scan scan;
  FilmStrip film = known_film(scan, strip);
  film.along_begin_mm = strip.begin_mm;
  film.along_end_mm = strip.end_mm;
  film.across_begin_mm = -strip.half_width_mm;
  film.across_end_mm = strip.half_width_mm;
  return film;
}

}  // namespace fogline::drawn
