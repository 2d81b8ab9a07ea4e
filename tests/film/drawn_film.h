// Film drawn as a few rectangles of known density at known places. No optics, no curve of film:
// what the finding and reading of film is tested against.
#pragma once

#include "film/film_layout.h"

#include <fogline/base/quantity.h>
#include <fogline/base/raster.h>

#include <algorithm>
#include <cmath>
#include <numbers>
#include <optional>
#include <vector>

namespace fogline::drawn {

/// A rectangle whose net density is added to what lies there.
struct Patch {
  FilmExtent area;
  double net_density = 0.0;
};

struct Strip {
  /// Stored place of (0, 0) of the film, direction of growing along_mm clockwise from +x.
  PointPx origin;
  double direction_deg = 0.0;
  double begin_mm = 0.0;
  double end_mm = 100.0;
  double half_width_mm = film_135::width_mm / 2.0;
  bool perforated = true;
  double first_hole_mm = 2.0;
  double base_density = 0.28;
  /// Pictures: of uneven density, 0.25 to 1.15 above base.
  std::vector<FilmExtent> frames;
  std::vector<Patch> patches;

  [[nodiscard]] FilmExtent frame(double begin, double length = 36.0) const {
    return {begin, begin + length, -12.0, 12.0};
  }
  [[nodiscard]] int holes_a_row() const {
    return static_cast<int>((end_mm - 1.0 - first_hole_mm) / film_135::pitch_mm) + 1;
  }
};

struct Scan {
  int width_px = 0;
  int height_px = 0;
  double pixels_per_mm = 10.0;
  int channels = 1;
  /// Code of the bare light path as a share of full scale.
  double bare_light = 0.8;
  double surround_density = 0.0;
  /// Part of the scan within which film can be seen, stored pixels; the rest is holder.
  std::optional<BoxPx> window;
  double grain_density = 0.01;
  std::uint32_t seed = 1;
  std::vector<Strip> strips;
};

/// Size and direction of a scan in which one horizontal strip lies in the middle, `margin_mm` of
/// its surroundings in sight.
inline Scan scan_of(Strip strip, double pixels_per_mm = 8.0, double margin_mm = 3.0) {
  Scan scan;
  scan.pixels_per_mm = pixels_per_mm;
  const double length = strip.end_mm - strip.begin_mm + 2.0 * margin_mm;
  const double height = 2.0 * (strip.half_width_mm + margin_mm);
  scan.width_px = static_cast<int>(std::lround(length * pixels_per_mm));
  scan.height_px = static_cast<int>(std::lround(height * pixels_per_mm));
  strip.origin = {(margin_mm - strip.begin_mm) * pixels_per_mm, 0.5 * height * pixels_per_mm};
  scan.strips.push_back(std::move(strip));
  return scan;
}

/// Direction of a strip as a unit vector: worked out once a strip, not once a sample.
inline PointMm heading(const Strip& strip) {
  const double angle = strip.direction_deg * std::numbers::pi / 180.0;
  return {std::cos(angle), std::sin(angle)};
}

inline PointMm film_at(const Scan& scan, const Strip& strip, PointMm along, double x, double y) {
  const double dx = (x - strip.origin.x) / scan.pixels_per_mm;
  const double dy = (y - strip.origin.y) / scan.pixels_per_mm;
  return {dx * along.along_mm + dy * along.across_mm, dy * along.along_mm - dx * along.across_mm};
}

inline PointMm film_at(const Scan& scan, const Strip& strip, double x, double y) {
  return film_at(scan, strip, heading(strip), x, y);
}

inline PointPx scan_at(const Scan& scan, const Strip& strip, PointMm film) {
  const double angle = strip.direction_deg * std::numbers::pi / 180.0;
  const double s = film.along_mm * scan.pixels_per_mm;
  const double t = film.across_mm * scan.pixels_per_mm;
  return {strip.origin.x + s * std::cos(angle) - t * std::sin(angle),
          strip.origin.y + s * std::sin(angle) + t * std::cos(angle)};
}

inline bool contains(const FilmExtent& area, PointMm film) {
  return film.along_mm >= area.along_begin_mm && film.along_mm < area.along_end_mm &&
         film.across_mm >= area.across_begin_mm && film.across_mm < area.across_end_mm;
}

/// A perforation: a rectangle with corners rounded by 0.5 mm (ISO 1007, from memory).
inline bool in_hole(const Strip& strip, PointMm film) {
  constexpr double corner_mm = 0.5;
  const double k = std::round((film.along_mm - strip.first_hole_mm) / film_135::pitch_mm);
  if (!strip.perforated || k < 0.0 || k >= strip.holes_a_row()) {
    return false;
  }
  const double s = std::abs(film.along_mm - strip.first_hole_mm - k * film_135::pitch_mm);
  const double t = std::abs(std::abs(film.across_mm) - film_135::row_across_mm);
  const double ds = s - (film_135::hole_along_mm / 2.0 - corner_mm);
  const double dt = t - (film_135::hole_across_mm / 2.0 - corner_mm);
  return std::max(ds, dt) < corner_mm &&
         std::hypot(std::max(ds, 0.0), std::max(dt, 0.0)) < corner_mm;
}

inline double picture_density(double along_mm, double across_mm, double phase) {
  return 0.7 + 0.45 * std::sin(0.35 * along_mm + 0.2 * across_mm + phase) *
                   std::cos(0.5 * across_mm - 0.13 * along_mm + 2.0 * phase);
}

/// Density of a strip where it lies; nothing off it. Bare light shows through perforations.
inline std::optional<double> strip_density(const Strip& strip, PointMm film) {
  if (film.along_mm < strip.begin_mm || film.along_mm >= strip.end_mm ||
      std::abs(film.across_mm) >= strip.half_width_mm) {
    return std::nullopt;
  }
  if (in_hole(strip, film)) {
    return 0.0;
  }
  double density = strip.base_density;
  for (std::size_t i = 0; i < strip.frames.size(); ++i) {
    if (contains(strip.frames[i], film)) {
      density += picture_density(film.along_mm, film.across_mm, 1.7 * static_cast<double>(i));
    }
  }
  for (const Patch& patch : strip.patches) {
    density += contains(patch.area, film) ? patch.net_density : 0.0;
  }
  return density;
}

inline double density_at(const Scan& scan, const std::vector<PointMm>& headings, double x,
                         double y) {
  if (scan.window) {
    const BoxPx& box = *scan.window;
    const bool inside = x >= box.x && y >= box.y && x < box.x + box.width && y < box.y + box.height;
    if (!inside) {
      return scan.surround_density;
    }
  }
  for (std::size_t i = 0; i < scan.strips.size(); ++i) {
    const PointMm film = film_at(scan, scan.strips[i], headings[i], x, y);
    if (const std::optional<double> density = strip_density(scan.strips[i], film)) {
      return *density;
    }
  }
  return scan.surround_density;
}

}  // namespace fogline::drawn
