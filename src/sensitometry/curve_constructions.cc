#include "sensitometry/curve_constructions.h"

#include <algorithm>
#include <cmath>

namespace fogline {

namespace {

constexpr int halvings = 45;

/// Log H from the centre to where the curve crosses an arc about it. Distance from the centre rises
/// along the curve, so there is one.
double arc_crossing(const CurveTable& curve, double centre, double radius) {
  double low = 0.0;
  double high = radius;
  for (int i = 0; i < halvings; ++i) {
    const double middle = 0.5 * (low + high);
    (std::hypot(middle, curve.density_at(centre + middle)) < radius ? low : high) = middle;
  }
  return 0.5 * (low + high);
}

double slope_of_arc(const CurveTable& curve, double centre, double radius) {
  const double along = arc_crossing(curve, centre, radius);
  return curve.density_at(centre + along) / std::max(1e-9, along);
}

}  // namespace

std::optional<TwoArcs> two_arcs(const CurveTable& curve) {
  // Where the curve has reached the inner arc's radius above the centre, the inner crossing lies
  // steeper than the outer one. From there leftwards to where it no longer does: far out, where
  // the curve is nearly level, the sign means nothing.
  double high = curve.log_h_at(inner_arc);
  if (!std::isfinite(high)) {
    return std::nullopt;
  }
  const auto excess = [&](double centre) {
    return slope_of_arc(curve, centre, inner_arc) - slope_of_arc(curve, centre, outer_arc);
  };
  constexpr double stride = 0.05;
  double low = high - stride;
  while (excess(low) > 0.0) {
    high = low;
    low -= stride;
    if (low < curve.begin_log_h) {
      return std::nullopt;
    }
  }
  for (int i = 0; i < halvings; ++i) {
    const double middle = 0.5 * (low + high);
    (excess(middle) < 0.0 ? low : high) = middle;
  }
  TwoArcs arcs;
  arcs.centre_log_h = 0.5 * (low + high);
  arcs.inner_log_h = arcs.centre_log_h + arc_crossing(curve, arcs.centre_log_h, inner_arc);
  arcs.outer_log_h = arcs.centre_log_h + arc_crossing(curve, arcs.centre_log_h, outer_arc);
  if (arcs.outer_log_h > curve.end_log_h()) {
    return std::nullopt;
  }
  arcs.contrast_index = curve.density_at(arcs.outer_log_h) / (arcs.outer_log_h - arcs.centre_log_h);
  return arcs;
}

std::optional<double> average_gradient(const CurveTable& curve, double log_h_range) {
  const double speed_point = curve.log_h_at(speed_point_density);
  if (!std::isfinite(speed_point) || speed_point + log_h_range > curve.end_log_h()) {
    return std::nullopt;
  }
  return (curve.density_at(speed_point + log_h_range) - speed_point_density) / log_h_range;
}

std::optional<StraightLine> straight_line(const CurveTable& curve, double begin_log_h,
                                          double end_log_h) {
  constexpr double slope_width = 0.3;
  constexpr double stride = 0.02;
  constexpr double kept_part = 0.95;
  const double first = begin_log_h + 0.5 * slope_width;
  const double last = end_log_h - 0.5 * slope_width;
  if (!(last > first)) {
    return std::nullopt;
  }
  double steepest = 0.0;
  double at = first;
  for (double log_h = first; log_h <= last; log_h += stride) {
    const double slope = curve.slope_at(log_h, slope_width);
    if (slope > steepest) {
      steepest = slope;
      at = log_h;
    }
  }
  if (!(steepest > 0.0)) {
    return std::nullopt;
  }
  StraightLine line{steepest, at, at};
  while (line.begin_log_h - stride >= first &&
         curve.slope_at(line.begin_log_h - stride, slope_width) >= kept_part * steepest) {
    line.begin_log_h -= stride;
  }
  while (line.end_log_h + stride <= last &&
         curve.slope_at(line.end_log_h + stride, slope_width) >= kept_part * steepest) {
    line.end_log_h += stride;
  }
  // Slopes were told over a width: so far the line reaches.
  line.begin_log_h -= 0.5 * slope_width;
  line.end_log_h += 0.5 * slope_width;
  double sum_x = 0.0;
  double sum_y = 0.0;
  double sum_xx = 0.0;
  double sum_xy = 0.0;
  int count = 0;
  for (double log_h = line.begin_log_h; log_h <= line.end_log_h + 1e-9; log_h += stride) {
    const double x = log_h - line.begin_log_h;
    const double y = curve.density_at(log_h);
    sum_x += x;
    sum_y += y;
    sum_xx += x * x;
    sum_xy += x * y;
    ++count;
  }
  line.gamma = (count * sum_xy - sum_x * sum_y) / (count * sum_xx - sum_x * sum_x);
  return line;
}

std::optional<double> fractional_gradient_point(const CurveTable& curve) {
  constexpr double part = 0.3;
  constexpr double span = 1.5;
  constexpr double slope_width = 0.06;
  constexpr double stride = 0.01;
  const double end = curve.end_log_h() - span;
  double before = -1.0;
  for (double log_h = curve.begin_log_h + slope_width; log_h < end; log_h += stride) {
    const double mean = (curve.density_at(log_h + span) - curve.density_at(log_h)) / span;
    const double excess = curve.slope_at(log_h, slope_width) - part * mean;
    // Far out both are nothing.
    constexpr double least_mean = 0.02;
    if (excess >= 0.0 && mean > least_mean) {
      return log_h - stride * excess / (excess - std::min(before, -1e-12));
    }
    before = excess;
  }
  return std::nullopt;
}

double delta_x(double density_gain) {
  return 0.83 - 0.86 * density_gain + 0.24 * density_gain * density_gain;
}

}  // namespace fogline
