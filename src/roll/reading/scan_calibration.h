#pragma once

#include "roll/reading/read_scan.h"

#include <fogline/roll/roll_measurement.h>

namespace fogline {

/// Writes into a scan by which calibration it was read, how its settings differ from that, and the
/// steps of a wedge in it. Before its fitness is judged.
void add_calibration(ScanMeasurement& scan, const ScanScanner& scanner, const ScanWork& work);

}  // namespace fogline
