#include <fogline/numerics/robust.h>
#include <fogline/sensitometry/curve_constructions.h>
#include <fogline/sensitometry/read_curve.h>

#include <algorithm>
#include <cmath>
#include <cstdio>
#include <functional>
#include <numeric>
#include <vector>

namespace fogline {

namespace {

/// A stop beyond the exposures the curve's doubt still says what it doesn't know.
constexpr double reach_beyond = 0.3;
/// Draws that can't be read, more than this share: the number isn't known.
constexpr double most_unreadable = 0.025;

std::string two_digits(double value) {
  char text[24];
  std::snprintf(text, sizeof text, "%.2f", value);
  return text;
}

/// A number on one curve, and the range of log H that it was read from.
struct Construction {
  double value = 0.0;
  double begin_log_h = 0.0;
  double end_log_h = 0.0;
};
using Construct = std::function<std::optional<Construction>(const CurveTable&)>;

CurveReading read(const CharacteristicCurve& curve, const Construct& construct) {
  CurveReading reading;
  const std::optional<Construction> best = construct(curve.mean);
  if (!best) {
    reading.reason = "the curve doesn't reach far enough";
    return reading;
  }
  if (best->begin_log_h < curve.begin_log_h - reach_beyond) {
    reading.reason = "it needs the curve from log H " + two_digits(best->begin_log_h) +
                     ", and the least exposure is " + two_digits(curve.begin_log_h);
    return reading;
  }
  if (best->end_log_h > curve.end_log_h + reach_beyond) {
    reading.reason = "it needs the curve up to log H " + two_digits(best->end_log_h) +
                     ", and the greatest exposure is " + two_digits(curve.end_log_h);
    return reading;
  }
  std::vector<double> values;
  for (const CurveTable& draw : curve.draws) {
    if (const auto drawn = construct(draw)) {
      values.push_back(drawn->value);
    }
  }
  const auto readable = static_cast<double>(values.size());
  if (readable < (1.0 - most_unreadable) * static_cast<double>(curve.draws.size())) {
    reading.reason = "the steps leave curves possible that don't reach far enough";
    return reading;
  }
  Quantity quantity;
  quantity.value = std::accumulate(values.begin(), values.end(), 0.0) / readable;
  quantity.lower95 = percentile(values, 0.025);
  quantity.upper95 = percentile(values, 0.975);
  quantity.u95 = std::max(*quantity.upper95 - quantity.value, quantity.value - *quantity.lower95);
  reading.quantity = quantity;
  return reading;
}

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

}  // namespace

CurveReadings read_curve(const CharacteristicCurve& curve) {
  const auto line = [&](auto number) {
    return [&curve, number](const CurveTable& table) -> std::optional<Construction> {
      const auto straight = straight_line(table, curve.begin_log_h, curve.end_log_h);
      return straight ? std::optional(Construction{number(*straight), straight->begin_log_h,
                                                   straight->end_log_h})
                      : std::nullopt;
    };
  };
  CurveReadings readings;
  readings.contrast_index = read(curve, contrast_index);
  readings.gradient_130 = read(curve, gradient_over(iso_triangle_log_h));
  readings.gradient_150 = read(curve, gradient_over(usual_gradient_log_h));
  readings.gradient_180 = read(curve, gradient_over(1.80));
  readings.gradient_zones = read(curve, gradient_over(zone_range_log_h));
  readings.gamma = read(curve, line([](const StraightLine& s) { return s.gamma; }));
  readings.straight_length =
      read(curve, line([](const StraightLine& s) { return s.end_log_h - s.begin_log_h; }));
  readings.speed_point_log_h = read(curve, speed_point);
  readings.triangle_gain = read(curve, triangle);
  readings.fractional_gradient_log_h = read(curve, fractional_gradient);
  return readings;
}

}  // namespace fogline
