#pragma once

#include <fogline/roll/exposure_target.h>
#include <fogline/roll/roll_measurement.h>

namespace fogline {

/// Lays a target's exposures on what the scans read, fits the characteristic curve and reads it.
/// Fills the scans' steps, marks the target's frames, and tells in cautions what couldn't be done.
void read_target(RollMeasurement& roll, const ExposureTarget& target);

}  // namespace fogline
