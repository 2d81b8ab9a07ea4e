// The numbers that the bench compares, of a curve that is known.
#pragma once

#include <array>
#include <functional>

namespace bench {

/// Contrast index, gradient over 1.50, gamma, log H of the speed point.
using CurveNumbers = std::array<double, 4>;

struct CurveRange {
  /// Within two of the speed point.
  double near_log_h = 0.0;
  /// Exposures that take part in the straight line.
  double begin_log_h = 0.0;
  double end_log_h = 0.0;
};

CurveNumbers numbers_of_curve(const std::function<double(double)>& net_density,
                              const CurveRange& range);

}  // namespace bench
