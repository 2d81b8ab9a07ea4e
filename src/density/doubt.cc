#include "density/callier.h"
#include "density/skewed_interval.h"

#include <fogline/base/quantity.h>
#include <fogline/density/doubt.h>
#include <fogline/density/scanner_calibration.h>

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
/// The logarithm is straight enough while stray light's doubt (95 %) is below this part of the
/// light.
constexpr double straight_part = 0.1;

/// What light's doubt, a share of the bare light, makes in a density of which `net` is silver, seen
/// in directed light.
double density_of_light(const DoubtSources& sources, double light, double density, double net) {
  const double seen = density - net + directed_density(net, sources.callier);
  return light / (transmittance_from_density(seen) * std::numbers::ln10 *
                  directed_slope(net, sources.callier));
}

double stray_density(const DoubtSources& sources, double density, double net) {
  double stray = sources.stray_transmittance;
  if (sources.scanner != nullptr) {
    stray = std::hypot(stray, sources.scanner->stray_doubt_in(sources.stray_field, density));
  }
  return density_of_light(sources, stray, density, net);
}

double transfer_density(const DoubtSources& sources, double density) {
  const double share = sources.transfer_share * std::max(0.0, density);
  return sources.scanner == nullptr ? share
                                    : std::hypot(share, sources.scanner->doubt_at(density).fit);
}

double certificate_density(const DoubtSources& sources, double density) {
  if (sources.scanner == nullptr) {
    return 0.0;
  }
  // A certificate's common error can't shift the bare light: it grows to its full size with D.
  const double positive = std::max(0.0, density);
  return std::hypot(sources.scanner->certificate_doubt * std::min(1.0, positive),
                    sources.scanner->slope_doubt_share * positive);
}

/// How much too low the density may read, one way: a lamp beyond the top code, and a tone curve
/// that flattens there.
double upward_95(const DoubtSources& sources, double density) {
  const double compressed = std::min(std::max(0.0, density), compression_reach_density);
  return sources.clipped_shift_density + (sources.highlight_compression - 1.0) * compressed;
}

/// Silver and what isn't silver are misread independently.
double angle_95(const DoubtSources& sources, double density, double net) {
  const double silver = std::max(0.0, net);
  const double base_share =
      sources.base_share_95 +
      callier_risen(silver) * (sources.dense_base_share_95 - sources.base_share_95);
  return std::hypot(sources.angle_share_95 * silver, base_share * std::max(0.0, density - silver));
}

double expanded(const std::vector<BudgetLine>& budget, bool common_only) {
  double squares = 0.0;
  for (const BudgetLine& line : budget) {
    if (line.source != DoubtSource::clipping && (line.common || !common_only)) {
      squares += line.standard_density * line.standard_density;
    }
  }
  return coverage_factor_95 * std::sqrt(squares);
}

/// What ends the numbers: stray light's and the calibration's own doubt, 95 %, as if all the
/// density were silver.
double limiting_u95(const DoubtSources& sources, double density) {
  // No scanner is surer of its stray light than this, share of the bare light.
  constexpr double least_stray = 1e-5;
  const double least = density_of_light(sources, least_stray, density, density);
  const double fit = sources.scanner == nullptr ? 0.0 : sources.scanner->doubt_at(density).fit;
  return coverage_factor_95 *
         std::hypot(std::max(least, stray_density(sources, density, density)), fit);
}

/// Lowest density at which the limiting doubt reaches `u95`: bracketed by steps, since a
/// calibration's doubt needn't rise evenly, then halved.
double density_at(const DoubtSources& sources, double u95) {
  constexpr double step = 0.05;
  constexpr int halvings = 40;
  double above = 0.0;
  while (above < deepest_density && limiting_u95(sources, above) <= u95) {
    above += step;
  }
  double below = std::max(0.0, above - step);
  for (int i = 0; i < halvings; ++i) {
    const double middle = 0.5 * (below + above);
    (limiting_u95(sources, middle) <= u95 ? below : above) = middle;
  }
  return below;
}

double shown_end(const DoubtSources& sources, double density) {
  return sources.scanner == nullptr ? density
                                    : std::min(density, sources.scanner->shown_to_density);
}

}  // namespace

std::vector<BudgetLine> budget_of_density(const DoubtSources& sources, double density, double net) {
  std::vector<BudgetLine> budget;
  const auto add = [&](DoubtSource source, double standard, bool common) {
    if (standard > 0.0) {
      budget.push_back({source, standard, common});
    }
  };
  add(DoubtSource::noise, sources.noise_density, false);
  add(DoubtSource::zero, sources.zero_density, false);
  add(DoubtSource::evenness, sources.evenness_density, false);
  add(DoubtSource::clipping, upward_95(sources, density) / coverage_factor_95, false);
  add(DoubtSource::stray_light, stray_density(sources, density, net), true);
  add(DoubtSource::transfer, transfer_density(sources, density), true);
  add(DoubtSource::certificate, certificate_density(sources, density), true);
  add(DoubtSource::angle, angle_95(sources, density, net) / coverage_factor_95, true);
  return budget;
}

double u95_of_density(const DoubtSources& sources, double density, double net) {
  return std::hypot(expanded(budget_of_density(sources, density, net), false),
                    upward_95(sources, density));
}

double u95_of_range(const DoubtSources& sources, double low, double high) {
  const double range = high - low;
  // As if all of both were silver.
  double standard =
      std::hypot(stray_density(sources, high, high), stray_density(sources, low, low));
  // Of a calibration's doubt, counted from the bare light, both ends share a part: at most the
  // greater one is left.
  const double transfer = sources.scanner == nullptr ? transfer_density(sources, range)
                                                     : transfer_density(sources, high);
  standard = std::hypot(standard, transfer);
  standard = std::hypot(standard, certificate_density(sources, range));
  standard = std::hypot(standard, std::hypot(sources.zero_density, sources.evenness_density));
  standard = std::hypot(standard, sources.noise_density);
  return std::hypot(coverage_factor_95 * standard, sources.angle_share_95 * std::max(0.0, range));
}

Quantity quantity_of_density(const DoubtSources& sources, double density, double net) {
  const std::vector<BudgetLine> budget = budget_of_density(sources, density, net);
  const double symmetric = expanded(budget, false);
  const double upward = upward_95(sources, density);
  Quantity quantity{density, std::hypot(symmetric, upward), {}, {}, {}, false};
  quantity.u95_common = expanded(budget, true);
  if (upward > 0.0) {
    quantity.lower95 = density - symmetric;
    quantity.upper95 = density + quantity.u95;
  }
  const double stray = stray_density(sources, density, net);
  if (coverage_factor_95 * stray * std::numbers::ln10 > straight_part) {
    const double all = symmetric / coverage_factor_95;
    const double rest = std::sqrt(std::max(0.0, all * all - stray * stray));
    const double light = stray * transmittance_from_density(density) * std::numbers::ln10;
    const DensityInterval interval = skewed_interval(density, light, rest);
    quantity.lower95 = interval.lower95;
    quantity.upper95 = density + std::hypot(interval.upper95 - density, upward);
  }
  return quantity;
}

double density_limit(const DoubtSources& sources) {
  return shown_end(sources, density_at(sources, limit_u95));
}

double density_reach(const DoubtSources& sources) {
  return shown_end(sources, density_at(sources, reach_u95));
}

}  // namespace fogline
