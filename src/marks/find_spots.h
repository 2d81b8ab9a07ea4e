#pragma once

#include "marks/mark_candidate.h"
#include "marks/mark_knowledge.h"
#include "marks/mark_tile.h"
#include "marks/spot_shape.h"

#include <optional>
#include <vector>

namespace fogline {

/// Dust, pinholes and air bells of one tile, found from the strongest peak to the weakest. Peaks
/// beside a spot may lead to it once more: find_marks() keeps the surest of what overlaps.
std::vector<MarkCandidate> find_spots(const MarkTile& tile, const FilmStrip& film,
                                      const MarkKnowledge& knowledge);

/// Where a spot lies, as far as it matters for what it can be.
struct SpotGround {
  double clear_density = 0.0;
  double pixels_per_mm = 0.0;
  /// On a picture; else on film that is surely unexposed.
  bool picture = true;
};

/// What kind of mark a spot is and how surely; nothing where it fits none.
std::optional<MarkCandidate> spot_kind(const SpotShape& shape, const SpotGround& ground,
                                       const MarkKnowledge& knowledge);

/// Finest scan on which dust and pinholes can be judged at all.
inline constexpr double fine_pixels_per_mm = 20.0;

}  // namespace fogline
