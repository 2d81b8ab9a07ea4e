#pragma once

#include "process/belief/light_signs.h"

#include <fogline/process/finding.h>
#include <fogline/process/roll_card.h>

#include <optional>

namespace fogline {

/// `fogged` by base plus fog above the bare light, against what is usual of the format: Bayes with
/// the usual densities (grey and clear bases mixed, since the stock isn't known) on one side and
/// the same plus a log-uniform amount of fog on the other. Coloured veil is tint's affair and
/// counts against fog, and so does colour film's mask where no colour was seen and the card (may be
/// nullptr) names no black-and-white film. Nothing where base plus fog isn't known or the
/// probability is small.
std::optional<Finding> fog_finding(const RollMeasurement& roll, const LightSigns& signs,
                                   const RollPopulation& population, const RollCard* card);

}  // namespace fogline
