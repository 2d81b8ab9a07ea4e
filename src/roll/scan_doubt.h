#pragma once

#include "roll/strip_reading.h"

#include <fogline/base/scan_source.h>
#include <fogline/density/doubt.h>

namespace fogline {

/// What makes the densities of a strip doubtful, from its readings and from the kind of scan.
DoubtSources doubt_of(const ScanInfo& info, const StripReading& reading);

}  // namespace fogline
