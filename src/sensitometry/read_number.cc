#include "sensitometry/read_number.h"

#include "numerics/robust.h"

#include <algorithm>
#include <cmath>
#include <cstdio>
#include <numeric>
#include <string>
#include <vector>

namespace fogline {

namespace {

/// A stop beyond the exposures the curve's doubt still says what it doesn't know.
constexpr double reach_beyond = 0.3;
/// Draws that can't be read, more than this share: the number isn't known.
constexpr double most_unreadable = 0.025;

/// With a minus that is one, as everywhere in print.
std::string two_digits(double value) {
  char text[24];
  std::snprintf(text, sizeof text, "%.2f", std::abs(value));
  return (value <= -0.005 ? "\u2212" : "") + std::string(text);
}

}  // namespace

CurveReading read_number(const CharacteristicCurve& curve, const Construct& construct) {
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
  // The greatest slope of curves that stray is greater than that of the curve they stray about: the
  // value is read on this, and its doubt is how the draws' values stray about their own mean.
  const double middle = std::accumulate(values.begin(), values.end(), 0.0) / readable;
  const double below = middle - percentile(values, 0.025);
  const double above = percentile(values, 0.975) - middle;
  Quantity quantity;
  quantity.value = best->value;
  quantity.u95 = std::max(below, above);
  // An interval as good as even is told as one number.
  constexpr double skew_part = 0.25;
  if (std::abs(above - below) > skew_part * quantity.u95) {
    quantity.lower95 = quantity.value - below;
    quantity.upper95 = quantity.value + above;
  }
  reading.quantity = quantity;
  return reading;
}

}  // namespace fogline
