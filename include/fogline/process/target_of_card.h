#pragma once

#include <fogline/process/roll_card.h>
#include <fogline/roll/exposure_target.h>

#include <optional>

namespace fogline {

/// Known exposures from what the card says. `reference`: the table of an exposed wedge, read by the
/// caller. Shutter times count as what their marks stand for; where the card tells no doubt, marked
/// times, apertures and unknown means err by 0.15 to 0.2 stop, filters by 0.05 (standard
/// uncertainty; common practice, no source), and times beyond a second by more (reciprocity).
ExposureTarget target_of_card(const RollCard& card, std::optional<WedgeReference> reference);

}  // namespace fogline
