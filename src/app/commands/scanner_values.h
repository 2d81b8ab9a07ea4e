#pragma once

#include <fogline/density/scanner_calibration.h>

#include <string>

namespace fogline {

/// "flatbed", "film-scanner", "camera". Throws UsageError for any other text.
ScannerDevice device_from_text(const std::string& text);

/// "3": a step of a wedge, counted from 1. Throws UsageError for what is none.
int first_step_from_text(const std::string& text);

}  // namespace fogline
