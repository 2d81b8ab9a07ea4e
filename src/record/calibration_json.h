#pragma once

#include "record/json_values.h"

#include <fogline/roll/roll_measurement.h>

namespace fogline {

/// By which calibration a scan was read; null without one.
Json json_from_calibration(const Known<ScanCalibration>& calibration);

/// The steps of a wedge in the scan.
Json json_from_steps(const ScanMeasurement& scan);

/// Uncertainty budgets, number by number, their lines as 95 % half widths.
Json json_from_budgets(const std::vector<DoubtBudget>& budgets);

}  // namespace fogline
