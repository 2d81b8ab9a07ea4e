#pragma once

#include "roll/reading/scan_reading.h"

#include <optional>
#include <vector>

namespace fogline {

/// Joins the scans of one roll, in the order given: marks frames scanned twice, lays the target's
/// exposures on them, and takes contrast and medians over all frames that are pictures.
MeasuredRoll join_scans(std::vector<ScanReading> scans,
                        const std::optional<ExposureTarget>& target);

}  // namespace fogline
