#pragma once

#include <fogline/sensitometry/characteristic_curve.h>
#include <fogline/sensitometry/sensitometry.h>

#include <functional>
#include <optional>

namespace fogline {

/// A number on one curve, and the range of log H that it was read from.
struct Construction {
  double value = 0.0;
  double begin_log_h = 0.0;
  double end_log_h = 0.0;
};
using Construct = std::function<std::optional<Construction>(const CurveTable&)>;

/// Reads a number from every curve that the steps leave possible (JCGM 101). Absent, with the
/// reason, where it needs the curve more than a stop beyond the exposures.
CurveReading read_number(const FittedCurve& curve, const Construct& construct);

}  // namespace fogline
