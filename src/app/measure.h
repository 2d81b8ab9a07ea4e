#pragma once

#include "app/commands/measure_command.h"
#include "exit_status.h"

namespace fogline {

/// `fogline measure`: reads the scans, prints the report, writes JSON and page. Files that can't be
/// read or written are told on standard error and in the status.
ExitStatus run_measure(const MeasureRequest& request);

}  // namespace fogline
