#pragma once

#include "marks/mark_candidate.h"
#include "marks/mark_knowledge.h"
#include "marks/mark_tile.h"

#include <vector>

namespace fogline {

/// Fibres of one tile: thin denser threads of constant width and constant opacity that wander over
/// even film. For scans from `fine_pixels_per_mm` on: in coarser ones a thread takes a tenth to
/// half of a pixel's light, and of nine told there four were threads: no better than chance.
std::vector<MarkCandidate> find_threads(const MarkTile& tile, const FilmStrip& film,
                                        const FibreKnowledge& knowledge);

}  // namespace fogline
