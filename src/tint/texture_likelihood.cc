#include "tint/texture_likelihood.h"

#include <algorithm>
#include <cmath>

namespace fogline {

namespace {

/// A patch that is dirty or printed spoils the best of models: no texture is less likely than this
/// share of the likeliest, so that texture alone never decides against colour.
constexpr double least_likelihood = 1e-4;

/// Likelihood of the variance read where `variance` is true, 1 at best.
double likelihood(const TintEvidence& evidence, double variance) {
  const double ratio = evidence.texture_variance / variance;
  return std::exp(0.5 * evidence.texture_freedom * (std::log(ratio) - ratio + 1.0));
}

}  // namespace

TextureLikelihood::TextureLikelihood(const TintEvidence& evidence,
                                     const std::vector<Weighted>& patchiness,
                                     const std::vector<Weighted>& clean_textures) {
  if (evidence.texture_freedom <= 0.0 || evidence.texture_variance <= 0.0) {
    table_.fill(1.0);
    return;
  }
  for (int i = 0; i <= steps; ++i) {
    const double density = end_density * i / steps;
    double sum = 0.0;
    for (const Weighted& patchy : patchiness) {
      for (const Weighted& clean : clean_textures) {
        const double veil = patchy.value * density;
        const double variance =
            evidence.texture_noise_variance + clean.value * clean.value + veil * veil;
        sum += patchy.weight * clean.weight * likelihood(evidence, variance);
      }
    }
    table_[static_cast<std::size_t>(i)] = std::max(least_likelihood, sum);
  }
}

double TextureLikelihood::at(double blue_less_red) const {
  const double place = std::min(std::abs(blue_less_red) / end_density, 1.0) * steps;
  const int i = std::min(static_cast<int>(place), steps - 1);
  const auto at = static_cast<std::size_t>(i);
  return table_[at] + (place - i) * (table_[at + 1] - table_[at]);
}

}  // namespace fogline
