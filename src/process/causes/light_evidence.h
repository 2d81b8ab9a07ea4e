#pragma once

#include "process/belief/light_signs.h"

#include <fogline/process/aim.h>

#include <string>
#include <vector>

namespace fogline {

/// What the roll shows of light and time, a sentence each with its number and what is usual:
/// shadows, highlights, edge print, leader, base plus fog.
std::vector<std::string> light_evidence(const LightSigns& signs, const ReadingScale& scale,
                                        const Aim& aim, const RollPopulation& population);

}  // namespace fogline
