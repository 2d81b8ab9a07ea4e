#pragma once

#include "marks/mark_candidate.h"
#include "marks/mark_tile.h"

#include <vector>

namespace fogline {

/// Fineness at which drying rings are looked for: rims are 0.2 to 0.8 mm broad.
inline constexpr double ring_pixels_per_mm = 8.0;

/// Drying rings: closed denser rims, 2.5 to 15 mm across, round to drawn out along the film.
std::vector<MarkCandidate> find_rings(const MarkTile& tile);

}  // namespace fogline
