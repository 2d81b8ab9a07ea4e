#pragma once

#include "marks/find_marks.h"
#include "roll/reading/strip_reading.h"

#include <vector>

namespace fogline {

/// Looks for marks on every strip of a scan that was read; only sure ones are kept.
MarkSearch scan_marks(const ScanGrid& grid, const FilmLayout& layout, const StrayLight& stray,
                      const std::vector<StripReading>& readings, const MarkKnowledge& knowledge);

/// Makes small marks of strip `number` unknown in its densities, so that tone is read without them.
/// Large ones (streaks, veils) stay: they are part of what prints.
void leave_out_marks(DensityStrip& density, int number, const std::vector<Mark>& marks,
                     const FilmMap& map);

}  // namespace fogline
