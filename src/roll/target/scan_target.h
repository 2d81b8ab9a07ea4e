#pragma once

#include "roll/reading/read_scan.h"

#include <fogline/roll/exposure_target.h>
#include <fogline/roll/roll_measurement.h>

namespace fogline {

/// Reads what a target needs of one scan: frames' middles, steps of a wedge printed on the film,
/// marked areas, and the doubts that net densities share. Throws FileError where a marked area
/// isn't film.
void add_target_readings(ScanMeasurement& scan, const ScanWork& work, const ExposureTarget& target);

}  // namespace fogline
