#pragma once

#include "roll/reading/read_scan.h"

#include <fogline/roll/roll_measurement.h>

#include <vector>

namespace fogline {

/// By which calibration a scan was read, how its settings differ from that, and the steps of a
/// wedge in it.
struct CalibrationUse {
  Known<ScanCalibration> calibration;
  std::vector<StepMeasurement> steps;
  std::vector<Caution> cautions;
};

CalibrationUse use_of_calibration(const ScanScanner& scanner, const ScanInfo& info, ZeroSource zero,
                                  const std::vector<StripReading>& readings);

}  // namespace fogline
