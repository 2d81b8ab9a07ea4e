#include "density/skewed_interval.h"

#include <fogline/base/quantity.h>

#include <algorithm>
#include <array>
#include <cmath>
#include <numbers>

namespace fogline {

namespace {

constexpr std::size_t value_count = 200;

double normal_share_below(double x) {
  return 0.5 * std::erfc(-x / std::numbers::sqrt2);
}

/// Equally likely values of a standard normal variable, each the middle of its share.
const std::array<double, value_count>& normal_values() {
  static const std::array<double, value_count> values = [] {
    constexpr double widest = 6.0;
    constexpr int halvings = 50;
    std::array<double, value_count> made{};
    for (std::size_t i = 0; i < value_count; ++i) {
      const double share = (static_cast<double>(i) + 0.5) / static_cast<double>(value_count);
      double below = -widest;
      double above = widest;
      for (int k = 0; k < halvings; ++k) {
        const double middle = 0.5 * (below + above);
        (normal_share_below(middle) < share ? below : above) = middle;
      }
      made[i] = 0.5 * (below + above);
    }
    return made;
  }();
  return values;
}

}  // namespace

DensityInterval skewed_interval(double density, double standard_transmittance,
                                double standard_density) {
  constexpr double least_doubt = 1e-6;
  constexpr double tail = 0.025;
  constexpr int halvings = 40;
  const double through = transmittance_from_density(density);
  const double least = transmittance_from_density(deepest_density);
  const double doubt = std::max(least_doubt, standard_density);
  std::array<double, value_count> densities{};
  for (std::size_t i = 0; i < value_count; ++i) {
    densities[i] = density_from_transmittance(
        std::max(least, through + standard_transmittance * normal_values()[i]));
  }
  const auto quantile = [&](double share) {
    double below = -1.0;
    double above = deepest_density;
    for (int k = 0; k < halvings; ++k) {
      const double middle = 0.5 * (below + above);
      double sum = 0.0;
      for (const double one : densities) {
        sum += normal_share_below((middle - one) / doubt);
      }
      (sum < share * static_cast<double>(value_count) ? below : above) = middle;
    }
    return 0.5 * (below + above);
  };
  return {quantile(tail), quantile(1.0 - tail)};
}

}  // namespace fogline
