#pragma once

#include <fogline/process/roll_population.h>

namespace fogline {

/// The population of rolls from `roll_population.toml`.
RollPopulation roll_population_from_calibration();

}  // namespace fogline
