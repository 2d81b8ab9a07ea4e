#pragma once

#include "process/belief/light_signs.h"

#include <fogline/process/finding.h>
#include <fogline/process/light_and_development.h>

#include <vector>

namespace fogline {

/// `normal`, `under-exposed`, `over-exposed`, `under-developed`, `over-developed`, each from a
/// probability of 0.1, and `weak-developer`, which takes its probability from `under-developed`.
/// Together they sum to at most 1.
std::vector<Finding> exposure_findings(const LightOrTime& light_or_time, const LightSigns& signs,
                                       const Aim& aim, const RollPopulation& population);

}  // namespace fogline
