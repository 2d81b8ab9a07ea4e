#pragma once

#include "roll/reading/strip_reading.h"

#include <fogline/base/caution.h>
#include <fogline/density/scanner_calibration.h>

#include <vector>

namespace fogline {

/// How a scan's settings differ from those of the calibration it is read by: bit depth, code of the
/// bare light, balance of its channels. Resolution is free.
std::vector<Caution> settings_cautions(const ScannerCalibration& scanner, const ScanInfo& info,
                                       const StripReading& reading);

/// True where any of them differs.
bool settings_differ(const ScannerCalibration& scanner, const ScanInfo& info,
                     const StripReading& reading);

}  // namespace fogline
