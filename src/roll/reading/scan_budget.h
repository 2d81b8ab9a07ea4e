#pragma once

#include "roll/reading/read_scan.h"

#include <fogline/roll/roll_measurement.h>

namespace fogline {

/// Writes the uncertainty budgets of a scan's base plus fog and of its frames' tones, after they
/// were measured.
void add_budgets(ScanMeasurement& scan, const ScanWork& work);

}  // namespace fogline
