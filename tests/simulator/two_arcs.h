// The two-arc construction of contrast index, for any callable curve. Included by film_curve.h.
#pragma once

#include <algorithm>
#include <cmath>

namespace filmsim {

/// Slope of the line from (centre, 0) to where the curve crosses the circle of that radius about
/// the centre; very steep where the curve is above the whole circle.
template <typename Curve>
double slope_at_radius(const Curve& net_density, double centre, double radius) {
  constexpr int kHalvings = 40;
  constexpr double kUpright = 1e9;
  if (net_density(centre) >= radius) return kUpright;
  double low = 0.0;
  double high = radius;
  for (int i = 0; i < kHalvings; ++i) {
    const double middle = 0.5 * (low + high);
    const double density = net_density(centre + middle);
    (middle * middle + density * density < radius * radius ? low : high) = middle;
  }
  return net_density(centre + low) / std::max(low, 1.0 / kUpright);
}

template <typename Curve>
TwoArcs two_arc_contrast(const Curve& net_density, double low_log_h, double high_log_h) {
  constexpr int kHalvings = 36;
  constexpr double kInnerRadius = 0.2;
  constexpr double kOuterRadius = 2.2;
  double low = low_log_h;
  double high = high_log_h;
  for (int i = 0; i < kHalvings; ++i) {
    const double centre = 0.5 * (low + high);
    const double inner = slope_at_radius(net_density, centre, kInnerRadius);
    const double outer = slope_at_radius(net_density, centre, kOuterRadius);
    // Far left of the toe the inner point lies flat, far up the curve it stands upright.
    (inner < outer ? low : high) = centre;
  }
  const double centre = 0.5 * (low + high);
  return {slope_at_radius(net_density, centre, kOuterRadius), centre};
}

}  // namespace filmsim
