// One row a number that a calibration gave, with what the simulated scanner did.
#pragma once

#include "calibration_case.h"

#include <string>
#include <vector>

namespace bench {

/// Throws std::runtime_error where the file can't be written.
void write_calibration_csv(const std::string& path, const std::vector<CalibrationCase>& cases);

}  // namespace bench
