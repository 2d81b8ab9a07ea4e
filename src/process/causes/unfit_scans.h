#pragma once

#include <fogline/process/finding.h>
#include <fogline/roll/roll_measurement.h>

#include <optional>

namespace fogline {

/// `unfit-scan` where some scan tells no density, with the scans' own cautions as evidence.
std::optional<Finding> unfit_finding(const RollMeasurement& roll);

}  // namespace fogline
