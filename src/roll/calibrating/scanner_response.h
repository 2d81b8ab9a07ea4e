#pragma once

#include <fogline/base/caution.h>
#include <fogline/base/scan_source.h>
#include <fogline/density/scanner_calibration.h>

#include <vector>

namespace fogline {

/// The transfer by which a calibrated scanner's codes are read.
Transfer scanner_transfer(const ScannerCalibration& calibration);

/// Notes the settings of the scan that a calibration was learned from.
void add_settings(ScannerCalibration& calibration, const ScanInfo& info, ScannerDevice device);

/// What a calibration's reader must know: what it lacks, and what would mend it.
std::vector<Caution> cautions_of(const ScannerCalibration& calibration);

}  // namespace fogline
