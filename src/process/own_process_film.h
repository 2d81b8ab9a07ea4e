#pragma once

#include <fogline/process/roll_card.h>
#include <fogline/roll/roll_measurement.h>

#include <optional>

namespace fogline {

/// Why a roll's light, time and baths aren't judged as those of black-and-white film: its picture
/// is dye. The card says so, or clear film is as orange as colour stock's mask or the pictures hold
/// colours, and no card names a black-and-white film. Nothing for all other rolls. `card` may be
/// nullptr.
std::optional<Unknown> why_own_process(const RollMeasurement& roll, const RollCard* card);

}  // namespace fogline
