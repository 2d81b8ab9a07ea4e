#pragma once

#include "record/json_values.h"

#include <fogline/roll/roll_measurement.h>

namespace fogline {

/// The schema's `scan` object.
Json json_from_scan(const ScanMeasurement& scan);

}  // namespace fogline
