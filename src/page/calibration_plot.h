#pragma once

#include "page/draw/element.h"

#include <fogline/density/scanner_calibration.h>

namespace fogline {

/// The response: code (log10, falling) over density, a line a channel, the steps on it.
Element response_plot(const ScannerCalibration& calibration);

/// The steps' differences from the reference over density, inside the calibration's own u95, with
/// the limit of use.
Element residual_plot(const ScannerCalibration& calibration);

}  // namespace fogline
