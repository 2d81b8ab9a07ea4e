#include "numerics/robust.h"

#include <algorithm>
#include <cmath>
#include <limits>

namespace fogline {

double percentile(std::span<const double> values, double share) {
  if (values.empty()) {
    return std::numeric_limits<double>::quiet_NaN();
  }
  std::vector<double> sorted(values.begin(), values.end());
  const double rank = std::clamp(share, 0.0, 1.0) * static_cast<double>(sorted.size() - 1);
  const auto below = static_cast<std::ptrdiff_t>(std::floor(rank));
  std::nth_element(sorted.begin(), sorted.begin() + below, sorted.end());
  const double low = sorted[static_cast<std::size_t>(below)];
  const double fraction = rank - static_cast<double>(below);
  if (fraction <= 0.0) {
    return low;
  }
  const double high = *std::min_element(sorted.begin() + below + 1, sorted.end());
  // Two infinite neighbours have no finite way between them.
  return low == high ? low : low + (high - low) * fraction;
}

double median(std::span<const double> values) {
  return percentile(values, 0.5);
}

LocationScale robust_location(std::span<const double> values) {
  const double location = median(values);
  std::vector<double> deviations;
  deviations.reserve(values.size());
  for (const double value : values) {
    deviations.push_back(std::abs(value - location));
  }
  return {location, mad_to_sd * median(deviations)};
}

}  // namespace fogline
