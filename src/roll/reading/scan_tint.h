#pragma once

#include "roll/reading/strip_reading.h"
#include "roll/scan_knowledge.h"
#include "tint/judge_tint.h"

#include <fogline/density/doubt.h>

#include <optional>
#include <vector>

namespace fogline {

/// Judges the colour of clear film over the strips of a scan. Unknown, with the reason, where the
/// scan is grey, tells no densities or shows no bare light; `densities` says whether it tells any.
Tint scan_tint(const ScanInfo& info, const FilmLayout& layout,
               const std::vector<StripReading>& readings,
               const std::optional<PerChannel<double>>& base_tint, bool densities,
               const ScanKnowledge& knowledge);

}  // namespace fogline
