#pragma once

#include "pixels/block_source.h"

#include <fogline/base/scan_source.h>

#include <vector>

namespace fogline {

/// A part of the grid that one thread reads at a time, in grid pixels.
struct GridPart {
  int x = 0;
  int y = 0;
  int width = 0;
  int height = 0;
};

/// Cuts a picture's grid into parts for `threads` threads: down, so that threads end together, and
/// across where the sums of one row of large tiles would take too much memory. Borders lie on
/// borders of strips or tiles where the grid allows: a unit cut by one is decoded twice.
std::vector<GridPart> plan_survey_parts(const BlockSource& source, const ScanInfo& info,
                                        int reduction, int threads);

}  // namespace fogline
