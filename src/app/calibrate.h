#pragma once

#include "app/commands/calibrate_command.h"
#include "exit_status.h"

namespace fogline {

/// Runs `fogline calibrate`: learns a scanner, prints what it can be trusted for, writes the
/// scanner file and the page. Throws FileError where scans or reference can't be used.
ExitStatus run_calibrate(const CalibrateRequest& request);

}  // namespace fogline
