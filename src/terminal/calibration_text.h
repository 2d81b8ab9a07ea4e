#pragma once

#include "terminal/text.h"

#include <fogline/roll/calibrate_scanner.h>

#include <string>

namespace fogline {

/// A calibration for a terminal: what the scanner may be trusted for, and its steps.
std::string text_from_calibration(const CalibrationRun& run, const TextOptions& options);

}  // namespace fogline
