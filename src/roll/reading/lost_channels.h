#pragma once

#include "roll/reading/strip_reading.h"

#include <fogline/base/quantity.h>
#include <fogline/base/scan_source.h>

#include <optional>
#include <vector>

namespace fogline {

/// Which channels tell nothing.
using LostChannels = PerChannel<bool>;

/// Channels that stand at the top code over bare light or clear film while another reads well
/// there: under a coloured lamp the strongest is over-exposed first. Nothing where all read alike.
std::optional<LostChannels> lost_channels(const ScanInfo& info,
                                          const std::vector<StripReading>& readings);

/// Puts in place of each lost channel what the others see together, weighted as for visual density:
/// densities are then theirs.
void leave_channels_out(ScanGrid& grid, const LostChannels& lost);

}  // namespace fogline
