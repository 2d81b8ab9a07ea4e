#pragma once

#include <fogline/process/finding.h>
#include <fogline/roll/roll_measurement.h>

#include <vector>

namespace fogline {

/// What the marks on the film say of its processing: `drying-marks`, `air-bells`, `dirty`,
/// `scratched`, `light-struck`, `uneven-development`. The confidence is the probability that at
/// least one mark of the kind is there; dirt is only spoken of where there is more than on any
/// film.
std::vector<Finding> mark_findings(const RollMeasurement& roll);

}  // namespace fogline
