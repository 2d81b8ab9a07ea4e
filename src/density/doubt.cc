#include <fogline/base/channels.h>
#include <fogline/density/doubt.h>

#include <algorithm>
#include <cmath>
#include <numbers>

namespace fogline {

namespace {

/// Compression near the top code matters for densities up to about this.
constexpr double compression_reach_density = 0.3;
/// Limit of use: a doubt of this much, 95 %.
constexpr double limit_u95 = 0.1;
/// End of what is told as a number.
constexpr double reach_u95 = 0.45;

double stray_density(const DoubtSources& sources, double density) {
  return sources.stray_transmittance / (transmittance_from_density(density) * std::numbers::ln10);
}

double symmetric_u95(const DoubtSources& sources, double zero, double density, double net) {
  const double standard = std::hypot(
      zero, std::hypot(stray_density(sources, density), sources.transfer_share * density));
  return std::hypot(coverage_factor_95 * standard, sources.angle_share_95 * std::max(0.0, net));
}

/// How much too low the density may read, one way: a lamp beyond the top code, and a tone curve
/// that flattens there.
double upward_95(const DoubtSources& sources, double density) {
  const double compressed = std::min(std::max(0.0, density), compression_reach_density);
  return sources.clipped_shift_density + (sources.highlight_compression - 1.0) * compressed;
}

/// Density at which stray light's doubt has grown to `u95`.
double density_at(const DoubtSources& sources, double u95) {
  constexpr double least_stray = 1e-5;
  const double stray = std::max(sources.stray_transmittance, least_stray);
  return -std::log10(coverage_factor_95 * stray / (u95 * std::numbers::ln10));
}

}  // namespace

double u95_of_density(const DoubtSources& sources, double density, double net) {
  return std::hypot(symmetric_u95(sources, sources.zero_density, density, net),
                    upward_95(sources, density));
}

double u95_of_range(const DoubtSources& sources, double low, double high) {
  const double range = high - low;
  const double standard =
      std::hypot(std::hypot(stray_density(sources, high), stray_density(sources, low)),
                 std::hypot(sources.transfer_share * range, sources.zero_density));
  return std::hypot(coverage_factor_95 * standard, sources.angle_share_95 * std::max(0.0, range));
}

Quantity quantity_of_density(const DoubtSources& sources, double density, double net) {
  Quantity quantity{density, u95_of_density(sources, density, net), {}, {}, {}, false};
  const double upward = upward_95(sources, density);
  if (upward > 0.0) {
    quantity.lower95 = density - symmetric_u95(sources, sources.zero_density, density, net);
    quantity.upper95 = density + quantity.u95;
  }
  return quantity;
}

double density_limit(const DoubtSources& sources) {
  return density_at(sources, limit_u95);
}

double density_reach(const DoubtSources& sources) {
  return density_at(sources, reach_u95);
}

}  // namespace fogline
