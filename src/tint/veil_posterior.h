#pragma once

#include "tint/amount_distribution.h"
#include "tint/tint_evidence.h"
#include "tint/tint_knowledge.h"

namespace fogline {

/// What the colour and texture of clear film say of the veils over it. Weights are probabilities.
struct VeilPosterior {
  double none = 0.0;
  /// Weight of a distribution: probability that this veil is there.
  AmountDistribution dye;
  AmountDistribution haze;
  AmountDistribution yellow;
  double mask = 0.0;
  /// The strongest of the veils that are there (masks left out).
  AmountDistribution strongest;
  /// Least squared misfit of any of it, in standard uncertainties squared.
  double misfit = 0.0;

  [[nodiscard]] double veiled() const { return 1.0 - none - mask; }
};

/// Bayes' rule over the veils of `knowledge` and the pairs met together. Amounts are
/// integrated over numerically, about where the colour puts them.
VeilPosterior veil_posterior(const TintEvidence& evidence, const TintKnowledge& knowledge);

/// The same without texture, pairs and mask, and a good deal quicker: probability that nothing
/// veils film whose clear part reads `clear`.
double none_probability(TintEvidence evidence, const Contrast& clear,
                        const TintKnowledge& knowledge);

}  // namespace fogline
