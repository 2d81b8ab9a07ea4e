#pragma once

#include "app/commands/measure_command.h"

namespace fogline {

/// Refuses what can't be meant: no scan, a scan named twice, a report over a scan, two reports in
/// one place. Throws UsageError.
void check_measure(const MeasureRequest& request);

}  // namespace fogline
