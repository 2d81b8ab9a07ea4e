// Curves whose numbers are known, for reading them.
#pragma once

#include <fogline/sensitometry/characteristic_curve.h>

#include <cmath>
#include <functional>

namespace fogline {

/// A table of any curve over a range of log H, fine enough that its corners don't matter.
inline CurveTable table_of(const std::function<double(double)>& net_density, double begin,
                           double end, double step = 0.002) {
  CurveTable table;
  table.begin_log_h = begin;
  table.step_log_h = step;
  for (double log_h = begin; log_h <= end + 1e-9; log_h += step) {
    table.net_density.push_back(net_density(log_h));
  }
  return table;
}

/// Net density a ln(1 + e^(b (x - x0))): a soft toe and a straight line of slope a b.
struct SoftToe {
  double a = 0.0;
  double b = 0.0;
  double x0 = 0.0;

  double operator()(double log_h) const { return a * std::log1p(std::exp(b * (log_h - x0))); }
};

}  // namespace fogline
