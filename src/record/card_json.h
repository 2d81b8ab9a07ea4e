#pragma once

#include "record/json_values.h"

#include <fogline/process/roll_card.h>

namespace fogline {

/// The roll card as understood: the keys of the card itself, times in seconds (`time_s`). What the
/// card leaves out is left out here too.
Json json_from_card(const RollCard& card);

}  // namespace fogline
