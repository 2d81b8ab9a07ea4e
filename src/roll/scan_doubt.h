#pragma once

#include "roll/strip_reading.h"

#include <fogline/base/scan_source.h>
#include <fogline/density/doubt.h>

namespace fogline {

/// Fog in clear film is silver, about this much: the part that the angle of light touches.
inline constexpr double usual_fog = 0.05;

/// What makes the densities of a strip doubtful, from its readings and from the kind of scan. Where
/// the reading has a calibration, it must outlive the result.
DoubtSources doubt_of(const ScanInfo& info, const StripReading& reading);

}  // namespace fogline
