#include "tint/tint_evidence.h"

#include "numerics/robust.h"

#include <algorithm>
#include <cmath>
#include <numbers>

namespace fogline {

namespace {

/// Smallest uncertainty of one strip's reading to believe, so that no strip outweighs all others.
constexpr double least_scatter = 0.0005;
/// A median absolute deviation tells a variance as well as this share of its samples would (Hampel
/// 1974), and neighbouring spots aren't independent.
constexpr double freedom_share = 0.3;
/// More degrees of freedom than this aren't believed: a population is never quite as stated.
constexpr double most_freedom = 12.0;
constexpr int fewest_texture_spots = 3;

double squared(double value) {
  return value * value;
}

/// Colour of clear film over the strips, weighted by their scatter; the base, where told, off.
void join_clear(TintEvidence& evidence, const std::vector<TintSigns>& strips,
                const TintLimits& limits) {
  PerChannel<double> sum{};
  double weights = 0.0;
  for (const TintSigns& strip : strips) {
    const double weight = 1.0 / squared(std::max(least_scatter, strip.channel_scatter));
    weights += weight;
    for (std::size_t c = 0; c < sum.size(); ++c) {
      sum[c] += weight * strip.clear[c];
    }
  }
  for (double& value : sum) {
    value /= weights;
  }
  const Contrast middle = contrast_of(sum);
  double between = 0.0;
  for (const TintSigns& strip : strips) {
    const Contrast own = contrast_of(strip.clear);
    between += (squared(own[0] - middle[0]) + squared(own[1] - middle[1])) /
               squared(std::max(least_scatter, strip.channel_scatter));
  }
  // Strips that differ by more than their scatter widen the doubt by as much (Birge 1932, Physical
  // Review 40, 207). A coordinate has half the variance of a difference of channels.
  const double birge =
      strips.size() > 1 ? std::max(1.0, between / static_cast<double>(strips.size() - 1)) : 1.0;
  const double joined_variance = birge / weights;
  if (limits.base_tint) {
    for (std::size_t c = 0; c < sum.size(); ++c) {
      sum[c] -= (*limits.base_tint)[c];
    }
  }
  evidence.base_told = limits.base_tint.has_value();
  evidence.clear = contrast_of(sum);
  const double least = *std::min_element(sum.begin(), sum.end());
  evidence.strongest_density = *std::max_element(sum.begin(), sum.end()) - least;
  // Both doubts are those of a difference of two channels: half the variance is a channel's.
  evidence.clear_sd = std::sqrt(0.5 * (joined_variance + squared(limits.zero_doubt)));
}

void join_texture(TintEvidence& evidence, const std::vector<TintSigns>& strips) {
  double total = 0.0;
  for (const TintSigns& strip : strips) {
    if (strip.texture_spots < fewest_texture_spots) {
      continue;
    }
    const double freedom = freedom_share * (strip.texture_spots - 1);
    const double noise = squared(strip.texture_noise);
    evidence.texture_variance += freedom * (squared(strip.texture) + noise);
    evidence.texture_noise_variance += freedom * noise;
    total += freedom;
  }
  if (total > 0.0) {
    evidence.texture_variance /= total;
    evidence.texture_noise_variance /= total;
    evidence.texture_freedom = std::min(total, most_freedom);
  }
}

void join_slopes(TintEvidence& evidence, const std::vector<TintSigns>& strips,
                 const TintLimits& limits) {
  TintEvidence::Slopes sum{0.0, 0.0, 0.0};
  double weights = 0.0;
  double stray = 0.0;
  for (const TintSigns& strip : strips) {
    if (!strip.slope) {
      continue;
    }
    const double weight = 1.0 / squared(std::max(least_scatter, strip.slope_doubt));
    weights += weight;
    sum.green += weight * (*strip.slope)[1];
    sum.blue += weight * (*strip.slope)[2];
    // Stray light of one channel alone, as a density at the dense end, over the range.
    const double bend = limits.coloured_stray * std::pow(10.0, strip.slope_high) /
                        std::numbers::ln10 / (strip.slope_high - strip.slope_low);
    stray = std::max(stray, bend);
  }
  if (weights > 0.0) {
    evidence.slopes = TintEvidence::Slopes{sum.green / weights, sum.blue / weights,
                                           std::sqrt(1.0 / weights + squared(stray))};
  }
}

}  // namespace

Contrast contrast_of(const PerChannel<double>& density) {
  return {(density[2] - density[0]) / std::numbers::sqrt2,
          (2.0 * density[1] - density[0] - density[2]) / std::sqrt(6.0)};
}

TintEvidence join_tint_signs(const std::vector<TintSigns>& strips, const TintLimits& limits) {
  TintEvidence evidence;
  join_clear(evidence, strips, limits);
  join_texture(evidence, strips);
  join_slopes(evidence, strips, limits);
  evidence.angle_share_95 = limits.angle_share_95;
  return evidence;
}

}  // namespace fogline
