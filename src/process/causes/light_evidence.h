#pragma once

#include "process/belief/light_signs.h"

#include <fogline/process/finding.h>
#include <fogline/process/light_and_development.h>

#include <vector>

namespace fogline {

/// What the roll shows of light and time, each with its number and what is usual: shadows,
/// highlights, edge print, leader, base plus fog.
std::vector<Fact<Evidence>> light_evidence(const LightSigns& signs, const ReadingScale& scale,
                                           const Aim& aim, const RollPopulation& population);

}  // namespace fogline
