// What changes slowly is worked out on cells of many pixels and laid over the picture by
// interpolation.
#pragma once

#include "simulator/plane.h"

namespace filmsim {

/// Means over squares of `cell` pixels; those at the right and lower border may be smaller.
Plane cell_means(const Plane& light, int cell);

/// light = (1 - share) light + share cells, the cells read between their middles.
void mix_in(Plane& light, const Plane& cells, int cell, float share);

}  // namespace filmsim
