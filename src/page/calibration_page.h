#pragma once

#include "page/html.h"

#include <fogline/roll/calibrate_scanner.h>

#include <string>
#include <vector>

namespace fogline {

/// A calibration as one page that needs no script, no network and no other file: what the scanner
/// may be trusted for, the steps over their picture, response, residuals and doubt. `pictures`
/// holds one for each of the run's, in order. The first scan's file name stands in `source_files`.
std::string html_from_calibration(const CalibrationRun& run,
                                  const std::vector<PagePicture>& pictures);

}  // namespace fogline
