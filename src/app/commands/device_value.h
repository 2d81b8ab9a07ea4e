#pragma once

#include <fogline/density/scanner_calibration.h>

#include <string>

namespace fogline {

/// "flatbed", "film-scanner", "camera". Throws UsageError for any other text.
ScannerDevice device_from_text(const std::string& text);

}  // namespace fogline
