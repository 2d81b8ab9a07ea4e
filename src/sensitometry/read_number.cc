#include "sensitometry/read_number.h"

#include "numerics/robust.h"

#include <algorithm>
#include <cmath>
#include <numeric>
#include <vector>

namespace fogline {

namespace {

/// A stop beyond the exposures the curve's doubt still says what it doesn't know.
constexpr double reach_beyond = 0.3;
/// Draws that can't be read, more than this share: the number isn't known.
constexpr double most_unreadable = 0.025;

}  // namespace

CurveReading read_number(const FittedCurve& curve, const Construct& construct) {
  const std::optional<Construction> best = construct(curve.mean);
  if (!best) {
    return Unknown::curve_too_short;
  }
  if (best->begin_log_h < curve.begin_log_h - reach_beyond) {
    return fact_of(Unknown::needs_less_exposure, {best->begin_log_h, curve.begin_log_h});
  }
  if (best->end_log_h > curve.end_log_h + reach_beyond) {
    return fact_of(Unknown::needs_more_exposure, {best->end_log_h, curve.end_log_h});
  }
  std::vector<double> values;
  for (const CurveTable& draw : curve.draws) {
    if (const auto drawn = construct(draw)) {
      values.push_back(drawn->value);
    }
  }
  const auto readable = static_cast<double>(values.size());
  if (readable < (1.0 - most_unreadable) * static_cast<double>(curve.draws.size())) {
    return Unknown::draws_too_short;
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
  return quantity;
}

}  // namespace fogline
