#pragma once

#include "marks/mark_candidate.h"
#include "marks/mark_knowledge.h"
#include "marks/mark_tile.h"

#include <vector>

namespace fogline {

/// A stretch of a scratch as seen in one tile. Its log odds are evidence per stretch and add up
/// when stretches are joined.
std::vector<MarkCandidate> scratch_pieces(const MarkTile& tile, const ScratchKnowledge& knowledge);

/// Joins pieces that go on from each other into scratches, and says how surely each is one and no
/// line of a picture. `pixels_per_mm` is the fineness they were looked for at.
std::vector<MarkCandidate> join_scratches(std::vector<MarkCandidate> pieces, const FilmStrip& film,
                                          double pixels_per_mm, const ScratchKnowledge& knowledge);

}  // namespace fogline
