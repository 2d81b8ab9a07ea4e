#pragma once

#include "marks/find_marks.h"
#include "marks/mark_tile.h"

namespace fogline {

/// The whole strip as drying rings are looked for in it.
MarkTile ring_tile(const FilmStrip& film, const MarkContext& context);

}  // namespace fogline
