#pragma once

#include "process/roll_population.h"

#include <fogline/process/light_and_development.h>
#include <fogline/roll/roll_measurement.h>

namespace fogline {

/// Weighs light against time from the roll's frames, edge print, leader and base plus fog: the
/// posterior over exposure error and contrast, from a stated population of rolls. `card` may be
/// nullptr.
LightOrTime weigh_light_and_time(const RollMeasurement& roll, const Aim& aim,
                                 const RollPopulation& population, const RollCard* card);

}  // namespace fogline
