#pragma once

#include "marks/mark_candidate.h"
#include "marks/mark_tile.h"

#include <vector>

namespace fogline {

/// Fibres of one tile: thin denser threads of constant width and constant opacity that wander over
/// even film.
std::vector<MarkCandidate> find_threads(const MarkTile& tile, const FilmStrip& film);

}  // namespace fogline
