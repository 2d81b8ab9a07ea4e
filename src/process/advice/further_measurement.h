#pragma once

#include "process/belief/light_belief.h"

#include <fogline/process/light_and_development.h>

#include <optional>

namespace fogline {

/// The one further measurement that would tell most of this roll's main cause: that
/// which leaves the least expected entropy of the five causes (Lindley 1956). What can be done with
/// the film in hand goes first; where none of it would help by a tenth, metered frames on the next
/// roll. Nothing where the cause is as good as known.
std::optional<FurtherMeasurement> further_measurement(const LightBelief& belief,
                                                      const LightSigns& signs,
                                                      const ReadingScale& scale, const Aim& aim,
                                                      const RollPopulation& population);

/// Probabilities of the causes under a belief.
CauseProbabilities causes_of(const LightBelief& belief, const Aim& aim,
                             const RollPopulation& population);

}  // namespace fogline
