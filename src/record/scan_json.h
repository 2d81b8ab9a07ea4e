#pragma once

#include "record/json_values.h"

#include <fogline/roll/roll_measurement.h>

namespace fogline {

/// The schema's `scan` object.
/// Code, severity and sentence each.
Json json_from_cautions(const std::vector<Caution>& cautions);

Json json_from_scan(const ScanMeasurement& scan);

}  // namespace fogline
