#pragma once

#include <fogline/roll/roll_measurement.h>

#include <string>

namespace fogline {

/// The characteristic curve as a table (RFC 4180): `kind` step, curve or reading; `name`; `log_h`;
/// `net_density` (for a reading its value); `u95`; `used` (of a step). Only the head where the roll
/// has no curve.
std::string curve_csv(const RollMeasurement& roll);

}  // namespace fogline
