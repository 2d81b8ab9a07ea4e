#include "sensitometry/curve_constructions.h"
#include "sensitometry/read_number.h"

#include <fogline/sensitometry/sensitometry.h>

#include <cmath>

namespace fogline {

namespace {

Construct gradient_over(double range) {
  return [range](const CurveTable& table) -> std::optional<Construction> {
    const auto gradient = average_gradient(table, range);
    const double from = table.log_h_at(speed_point_density);
    return gradient ? std::optional(Construction{*gradient, from, from + range}) : std::nullopt;
  };
}

std::optional<Construction> speed_point(const CurveTable& table) {
  const double at = table.log_h_at(speed_point_density);
  return std::isfinite(at) ? std::optional(Construction{at, at, at}) : std::nullopt;
}

std::optional<Construction> triangle(const CurveTable& table) {
  auto gradient = gradient_over(iso_triangle_log_h)(table);
  if (gradient) {
    gradient->value *= iso_triangle_log_h;
  }
  return gradient;
}

std::optional<Construction> contrast_index(const CurveTable& table) {
  const auto arcs = two_arcs(table);
  return arcs ? std::optional(
                    Construction{arcs->contrast_index, arcs->inner_log_h, arcs->outer_log_h})
              : std::nullopt;
}

std::optional<Construction> fractional_gradient(const CurveTable& table) {
  const auto at = fractional_gradient_point(table);
  return at ? std::optional(Construction{*at, *at, *at}) : std::nullopt;
}

std::optional<Construction> delta_x_point(const CurveTable& table) {
  const auto gain = triangle(table);
  return gain ? std::optional(Construction{gain->begin_log_h - delta_x(gain->value),
                                           gain->begin_log_h, gain->end_log_h})
              : std::nullopt;
}

/// Slope at the speed point as a part of the straight line's: a soft toe has a small one.
Construct toe_slope_part(const FittedCurve& curve) {
  return [&curve](const CurveTable& table) -> std::optional<Construction> {
    constexpr double slope_width = 0.06;
    const double at = table.log_h_at(speed_point_density);
    const auto straight = straight_line(table, curve.begin_log_h, curve.sure_end_log_h);
    if (!std::isfinite(at) || !straight) {
      return std::nullopt;
    }
    return Construction{table.slope_at(at, slope_width) / straight->gamma, at, at};
  };
}

/// From the speed point to where the straight line begins: the toe's length.
Construct toe_length(const FittedCurve& curve) {
  return [&curve](const CurveTable& table) -> std::optional<Construction> {
    const double at = table.log_h_at(speed_point_density);
    const auto straight = straight_line(table, curve.begin_log_h, curve.sure_end_log_h);
    if (!std::isfinite(at) || !straight) {
      return std::nullopt;
    }
    return Construction{straight->begin_log_h - at, at, at};
  };
}

/// Net density where the shoulder begins; only where the curve bends within the exposures.
CurveReading shoulder_of(const FittedCurve& curve) {
  const auto straight = straight_line(curve.mean, curve.begin_log_h, curve.sure_end_log_h);
  constexpr double margin_log_h = 0.16;  // slopes are told over 0.3 of log H
  if (straight && straight->end_log_h > curve.sure_end_log_h - margin_log_h) {
    return Unknown::straight_to_the_end;
  }
  return read_number(curve, [&curve](const CurveTable& table) -> std::optional<Construction> {
    const auto line = straight_line(table, curve.begin_log_h, curve.sure_end_log_h);
    if (!line) {
      return std::nullopt;
    }
    return Construction{table.density_at(line->end_log_h), line->begin_log_h, line->end_log_h};
  });
}

}  // namespace

CurveReadings read_curve(const FittedCurve& curve) {
  const auto line = [&](auto number) {
    return [&curve, number](const CurveTable& table) -> std::optional<Construction> {
      const auto straight = straight_line(table, curve.begin_log_h, curve.sure_end_log_h);
      return straight ? std::optional(Construction{number(*straight), straight->begin_log_h,
                                                   straight->end_log_h})
                      : std::nullopt;
    };
  };
  CurveReadings readings;
  readings.contrast_index = read_number(curve, contrast_index);
  readings.gradient_130 = read_number(curve, gradient_over(iso_triangle_log_h));
  readings.gradient_150 = read_number(curve, gradient_over(usual_gradient_log_h));
  readings.gradient_180 = read_number(curve, gradient_over(1.80));
  readings.gradient_zones = read_number(curve, gradient_over(zone_range_log_h));
  readings.gamma = read_number(curve, line([](const StraightLine& s) { return s.gamma; }));
  readings.straight_length =
      read_number(curve, line([](const StraightLine& s) { return s.end_log_h - s.begin_log_h; }));
  readings.speed_point_log_h = read_number(curve, speed_point);
  readings.triangle_gain = read_number(curve, triangle);
  readings.fractional_gradient_log_h = read_number(curve, fractional_gradient);
  readings.delta_x_log_h = read_number(curve, delta_x_point);
  readings.toe_length = read_number(curve, toe_length(curve));
  readings.toe_slope_part = read_number(curve, toe_slope_part(curve));
  readings.shoulder_density = shoulder_of(curve);
  return readings;
}

}  // namespace fogline
