#pragma once

#include "roll/reading/strip_reading.h"

#include <fogline/roll/roll_measurement.h>

#include <string>
#include <vector>

namespace fogline {

/// The uncertainty budgets of base plus fog and of the frames' tones of one strip; `name` is what
/// its base plus fog is called.
std::vector<DoubtBudget> strip_budgets(const ScanInfo& info, const StripReading& reading,
                                       const Known<BaseFog>& base_fog, const std::string& name,
                                       const std::vector<FrameMeasurement>& frames);

}  // namespace fogline
