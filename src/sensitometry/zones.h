#pragma once

#include <fogline/sensitometry/sensitometry.h>

#include <optional>

namespace fogline {

/// `metered_log_h`: log H that the meter's reading gave, Zone V. `exposure_index`: that the meter
/// was set to.
ZonePlacement place_zones(const FittedCurve& curve, std::optional<double> metered_log_h,
                          std::optional<double> exposure_index);

/// Length in log H of what can be used: from the fractional-gradient point to where the slope falls
/// to the same number again, or, as a lower bound, as far as the curve can be told.
CurveReading useful_range(const FittedCurve& curve);

}  // namespace fogline
