#pragma once

#include "film/film_layout.h"

#include <fogline/base/raster.h>
#include <fogline/base/scan_source.h>

#include <cstdint>

namespace fogline {

/// Part of a scan laid straight: rows run along the film, one pixel is 1 / pixels_per_mm square on
/// the film, and holds the area average of linear light (a densitometer averages transmittance,
/// not density).
struct StraightStrip {
  FilmExtent extent;
  double pixels_per_mm = 10.0;
  /// Linear light, 1 or 3 channels; NaN outside the scan.
  Raster<float> light;
  /// Clip bits of the scan's pixels below (see ScanGrid::clipped), joined.
  Raster<std::uint8_t> clipped;

  [[nodiscard]] double along_mm(int x) const {
    return extent.along_begin_mm + (x + 0.5) / pixels_per_mm;
  }
  [[nodiscard]] double across_mm(int y) const {
    return extent.across_begin_mm + (y + 0.5) / pixels_per_mm;
  }
  [[nodiscard]] int column(double along_mm) const;
  [[nodiscard]] int row(double across_mm) const;
};

/// Spots of 0.1 mm: the size at which tone is read.
inline constexpr double spot_pixels_per_mm = 10.0;

/// Lays a part of the scan straight. Area averages: where the scan is finer than the strip, each
/// strip pixel averages a square of samples. A strip of more than 4 million pixels (400 cm2 of film
/// in spots of 0.1 mm) is laid coarser than wanted.
StraightStrip straighten(const ScanGrid& grid, const FilmMap& map, const FilmExtent& extent,
                         double wanted_pixels_per_mm);

/// Makes unknown (NaN) what lies outside a convex polygon of the scan, less a margin: the holder
/// round a window. Does nothing without corners.
void mask_outside(StraightStrip& strip, const FilmMap& map, const std::vector<PointPx>& corners,
                  double margin_mm);

}  // namespace fogline
