// Marks that are more than a disc, drawn on even film.
#pragma once

#include "marks/drawn_density.h"

#include <algorithm>
#include <cmath>
#include <numbers>
#include <vector>

namespace fogline {

inline double distance_mm(PointMm one, PointMm other) {
  return std::hypot(one.along_mm - other.along_mm, one.across_mm - other.across_mm);
}

/// From a point to the straight piece between two others.
inline double distance_mm(PointMm at, PointMm begin, PointMm end) {
  const PointMm piece{end.along_mm - begin.along_mm, end.across_mm - begin.across_mm};
  const double squared = piece.along_mm * piece.along_mm + piece.across_mm * piece.across_mm;
  const double share = ((at.along_mm - begin.along_mm) * piece.along_mm +
                        (at.across_mm - begin.across_mm) * piece.across_mm) /
                       squared;
  const double held = std::clamp(share, 0.0, 1.0);
  return distance_mm(
      at, {begin.along_mm + held * piece.along_mm, begin.across_mm + held * piece.across_mm});
}

/// A line through points, of one breadth and contrast, its edges one pixel soft.
inline void draw_line(DrawnDensity& film, const std::vector<PointMm>& points, double width_mm,
                      double contrast) {
  const double pixels_per_mm = film.film.map.pixels_per_mm();
  const auto [left, right] = std::minmax_element(
      points.begin(), points.end(), [](PointMm a, PointMm b) { return a.along_mm < b.along_mm; });
  const auto [top, bottom] = std::minmax_element(
      points.begin(), points.end(), [](PointMm a, PointMm b) { return a.across_mm < b.across_mm; });
  const double reach = 0.5 * width_mm + 1.0 / pixels_per_mm;
  film.draw_in({left->along_mm - reach, right->along_mm + reach, top->across_mm - reach,
                bottom->across_mm + reach},
               [&](PointMm at, double density) {
                 double nearest = INFINITY;
                 for (std::size_t i = 1; i < points.size(); ++i) {
                   nearest = std::min(nearest, distance_mm(at, points[i - 1], points[i]));
                 }
                 return density + contrast * disc_share(nearest * pixels_per_mm,
                                                        0.5 * width_mm * pixels_per_mm);
               });
}

/// Points of an arc of a circle; angles clockwise from the direction of growing along_mm.
inline std::vector<PointMm> arc(PointMm middle, double radius_mm, double from_deg, double to_deg) {
  constexpr int pieces = 40;
  std::vector<PointMm> points;
  for (int i = 0; i <= pieces; ++i) {
    const double angle = (from_deg + (to_deg - from_deg) * i / pieces) * std::numbers::pi / 180.0;
    points.push_back({middle.along_mm + radius_mm * std::cos(angle),
                      middle.across_mm + radius_mm * std::sin(angle)});
  }
  return points;
}

/// The rim that a drop leaves, an ellipse with its long axis along the film, denser by `height` on
/// its crest.
inline void draw_rim(DrawnDensity& film, PointMm middle, double along_radius_mm,
                     double across_radius_mm, double height) {
  constexpr double sd_mm = 0.15;
  film.draw([&](PointMm at, double density) {
    const double stretch = along_radius_mm / across_radius_mm;
    const double off =
        std::hypot((at.along_mm - middle.along_mm) / stretch, at.across_mm - middle.across_mm) -
        across_radius_mm;
    return density + height * std::exp(-0.5 * std::pow(off / sd_mm, 2.0));
  });
}

}  // namespace fogline
