#pragma once

#include <fogline/roll/calibrate_scanner.h>

#include <string>
#include <vector>

namespace fogline {

/// What the scanner may now be trusted for, in a sentence or two.
std::string calibration_verdict(const ScannerCalibration& calibration);

/// How the calibration was made, a sentence each.
std::vector<std::string> calibration_method(const ScannerCalibration& calibration);

/// Stray light and black offset as far as they were told.
std::string stray_sentence(const ScannerCalibration& calibration);

/// "used", or why not.
std::string step_fate(const CalibrationStep& step);

/// A step's difference from the reference, or a dash.
std::string step_difference(const CalibrationStep& step);

/// u95 at a density, all that a calibrated reading carries from the calibration.
double calibration_u95(const ScannerCalibration& calibration, double density);

}  // namespace fogline
