#pragma once

#include "app/commands/calibrate_command.h"

namespace fogline {

/// Refuses what can't be meant: no scan, no output, no or two ways to calibrate, numbers that don't
/// fit the scans, a result over a scan. Throws UsageError.
void check_calibrate(const CalibrateRequest& request);

}  // namespace fogline
