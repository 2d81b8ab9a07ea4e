#include "tint/stain_posterior.h"

#include <cmath>

namespace fogline {

namespace {

/// Steps of the logarithm of the amount, 2 % each.
constexpr int steps = 128;

}  // namespace

StainPosterior stain_posterior(const TintEvidence& evidence, const TintKnowledge& knowledge) {
  const StainPopulation& population = knowledge.stain;
  StainPosterior posterior;
  const auto fit = [&](double blue, double green) {
    if (!evidence.slopes) {
      return 1.0;
    }
    const double sd = std::hypot(evidence.slopes->sd,
                                 std::hypot(knowledge.natural_slope_sd,
                                            knowledge.angle_slope_part * evidence.angle_share_95));
    const double b = (evidence.slopes->blue - 1.0 - blue) / sd;
    const double g = (evidence.slopes->green - 1.0 - green) / sd;
    return std::exp(-0.5 * (b * b + g * g));
  };
  const double none = (1.0 - population.share) * fit(0.0, 0.0);
  for (int i = 0; i <= steps; ++i) {
    const double blue =
        population.least * std::pow(population.most / population.least, i / double{steps});
    for (const Weighted& green : population.green_shares) {
      posterior.stain.add(
          blue, population.share * green.weight / (steps + 1) * fit(blue, green.value * blue));
    }
  }
  const double total = none + posterior.stain.total();
  if (total > 0.0) {
    posterior.stain.scale(1.0 / total);
  }
  return posterior;
}

}  // namespace fogline
