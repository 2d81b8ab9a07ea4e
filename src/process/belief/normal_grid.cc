#include "process/belief/normal_grid.h"

#include <fogline/base/quantity.h>

#include <cmath>
#include <cstddef>
#include <numbers>

namespace fogline {
namespace {

/// Where a normal distribution has `share` of itself below, in standard deviations, by bisection.
double normal_deviation(double share) {
  constexpr double beyond_all = 9.0;
  // Halvings that bring the bracket of 18 below 1e-9.
  constexpr int halvings = 34;
  double low = -beyond_all;
  double high = beyond_all;
  for (int i = 0; i < halvings; ++i) {
    const double middle = 0.5 * (low + high);
    (normal_share_below(middle) < share ? low : high) = middle;
  }
  return 0.5 * (low + high);
}

}  // namespace

double normal_share_below(double deviation) {
  return 0.5 * std::erfc(-deviation / std::numbers::sqrt2);
}

std::vector<double> normal_slices(int count) {
  std::vector<double> slices(static_cast<std::size_t>(count));
  double squares = 0.0;
  for (std::size_t i = 0; i < slices.size(); ++i) {
    slices[i] = normal_deviation((static_cast<double>(i) + 0.5) / count);
    squares += slices[i] * slices[i];
  }
  if (count > 1) {
    const double sd = std::sqrt(squares / count);
    for (double& slice : slices) {
      slice /= sd;
    }
  }
  return slices;
}

double LogNormal::at(double deviation) const {
  return std::exp(mean + sd * deviation);
}

LogNormal log_normal(const PriorRange& range) {
  const double low = std::log(range.low);
  const double high = std::log(range.high);
  return {0.5 * (low + high), 0.5 * (high - low) / coverage_factor_95};
}

}  // namespace fogline
