// Sets a measured roll of one scan beside the simulator's truth.
#pragma once

#include "scan_case.h"
#include "simulator/render.h"

#include <fogline/roll/roll_measurement.h>

namespace bench {

/// Fills what is true of the scan whether it can be measured or not: its class, and how much there
/// is to find, so that a scan that fails counts as missed.
void describe(const filmsim::Simulated& simulated, ScanCase& result);

/// Fills everything of `result` that comes from comparing.
void compare(const filmsim::Simulated& simulated, const fogline::RollMeasurement& roll,
             ScanCase& result);

}  // namespace bench
