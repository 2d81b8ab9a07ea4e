#pragma once

#include "roll/reading/strip_reading.h"

#include <fogline/base/scan_source.h>
#include <fogline/density/doubt.h>

namespace fogline {

/// What makes the densities of a strip doubtful, from its readings and from the kind of scan. Where
/// the reading has a calibration, it must outlive the result.
DoubtSources doubt_of(const ScanInfo& info, const StripReading& reading);

/// The same for clear film: where it was read in the rebate, between the holes that zero was read
/// from, lamp and lens have little room to differ.
DoubtSources doubt_of_clear_film(const ScanInfo& info, const StripReading& reading);

}  // namespace fogline
