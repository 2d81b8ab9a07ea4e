#pragma once

#include "tint/amount_distribution.h"
#include "tint/tint_evidence.h"
#include "tint/tint_knowledge.h"

namespace fogline {

/// What the slopes say of image-wise stain.
struct StainPosterior {
  /// Blue density gained at a silver density of 1; its weight is the probability of stain.
  AmountDistribution stain;
};

/// Without slopes: the population's own.
StainPosterior stain_posterior(const TintEvidence& evidence, const TintKnowledge& knowledge);

}  // namespace fogline
