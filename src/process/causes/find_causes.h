#pragma once

#include "process/roll_population.h"

#include <fogline/process/finding.h>
#include <fogline/process/light_and_development.h>

#include <vector>

namespace fogline {

/// Everything the roll's scans say of its processing, most probable first: light or time, fog, not
/// exposed, not developed, tint, marks, unfit scans. `card` may be nullptr.
std::vector<Finding> find_causes(const RollMeasurement& roll, const LightOrTime& light_or_time,
                                 const Aim& aim, const RollPopulation& population,
                                 const RollCard* card);

}  // namespace fogline
