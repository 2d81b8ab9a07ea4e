// Sets a measured roll of one scan beside the simulator's truth.
#pragma once

#include "scan_case.h"
#include "simulator/render.h"

#include <fogline/roll/roll_measurement.h>

namespace bench {

/// Fills everything of `result` that comes from comparing.
void compare(const filmsim::Simulated& simulated, const fogline::RollMeasurement& roll,
             ScanCase& result);

}  // namespace bench
