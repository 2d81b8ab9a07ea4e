#pragma once

#include <fogline/process/finding.h>
#include <fogline/roll/roll_measurement.h>

#include <vector>

namespace fogline {

/// `dye-left`, `fixing-incomplete` and `stained` from the colour of the clear film.
std::vector<Finding> tint_findings(const RollMeasurement& roll);

}  // namespace fogline
