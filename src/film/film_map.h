#pragma once

#include <fogline/base/raster.h>

#include <span>
#include <vector>

namespace fogline {

/// A known point of a strip: where it lies on the film, and where in the scan.
struct MapPoint {
  PointMm film;
  PointPx scan;
};

/// Where each point of a strip lies in the scan: millimetres on the film to stored pixels.
///
/// x and y are low polynomials: cubic at most along the film, linear across it. That holds a
/// strip's turn, a camera's perspective, the part of lens distortion that matters between two rows
/// of perforations, and the bow of a strip that lies freely on the glass, and it is fitted by
/// linear least squares, so that a few wrong points can be dropped. Beyond the fitted stretch it
/// goes on in straight lines. Accuracy: the fit's own residual inside the stretch; a lens that
/// bends straight lines by 2 % at the corner leaves 0.15 mm along the film on the middle line.
class FilmMap {
 public:
  FilmMap() = default;

  /// A plain turn and scale: `direction_deg` clockwise from the image's +x axis to the direction of
  /// growing along_mm; `origin` is where (0, 0) of the film lies.
  static FilmMap straight(PointPx origin, double direction_deg, double pixels_per_mm);

  /// Fitted to points on two rows (both sides of the strip) or on one row. On one row the across
  /// direction is taken square to the row at the same scale. Degree along the film by number and
  /// spread of points. Wrong points are dropped (biweight). Needs at least two points; with fewer
  /// the map stays empty.
  static FilmMap fitted(std::span<const MapPoint> points);

  [[nodiscard]] bool empty() const { return x_.empty(); }
  [[nodiscard]] PointPx scan_from_film(PointMm film) const;
  [[nodiscard]] PointMm film_from_scan(PointPx scan) const;

  /// Stored pixels a millimetre along the film, at its fitted middle.
  [[nodiscard]] double pixels_per_mm() const;
  /// Direction of growing along_mm, degrees clockwise from +x, at the fitted middle.
  [[nodiscard]] double direction_deg() const;
  /// The direction's turn against the nearest image axis, clockwise, -45 to 45.
  [[nodiscard]] double rotation_deg() const;

 private:
  // Coefficients of 1, t, s, s t, s^2, s^2 t, s^3 with s in units of 100 mm, t in mm.
  std::vector<double> x_;
  std::vector<double> y_;
  double begin_mm_ = 0.0;
  double end_mm_ = 0.0;
};

}  // namespace fogline
