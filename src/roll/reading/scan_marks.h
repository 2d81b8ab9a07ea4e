#pragma once

#include "marks/find_marks.h"
#include "roll/reading/strip_reading.h"

#include <vector>

namespace fogline {

/// Looks for marks on every strip of a scan that was read; only sure ones are kept.
MarkSearch scan_marks(const ScanGrid& grid, const FilmLayout& layout, const StrayLight& stray,
                      const std::vector<StripReading>& readings, const MarkKnowledge& knowledge);

/// The readings with small marks unknown in their densities, so that tone is read without them.
/// Large ones (streaks, veils) stay: they are part of what prints.
std::vector<StripReading> without_marks(std::vector<StripReading> readings,
                                        const FilmLayout& layout, const std::vector<Mark>& marks);

}  // namespace fogline
