#pragma once

#include "process/roll_population.h"

#include <fogline/process/light_and_development.h>

namespace fogline {

/// Light and time from the roll's own curve: development by its contrast index, light by where the
/// metered exposure lies over the speed point. Needs a contrast index.
LightOrTime weigh_target(const Sensitometry& read, const Aim& aim,
                         const RollPopulation& population);

}  // namespace fogline
