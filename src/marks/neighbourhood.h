#pragma once

#include "marks/mark_tile.h"

namespace fogline {

/// Densities that the film round a place shows: the ends between which all but the outermost
/// twentieths lie.
struct DensityRange {
  double low = 0.0;
  double high = 0.0;
};

/// Range over a box grown by `reach_mm`, the box itself left out.
DensityRange range_round(const MarkTile& tile, const cv::Rect& box, double reach_mm);

/// How far a mark lies beyond what the film round it shows, in units of its own contrast: 1 for an
/// opaque grain on even film, 0 or less for a speck of sky between leaves.
double beyond_range(const DensityRange& range, double core_density, double contrast);

/// True where a place may carry picture: inside a frame, or where frames aren't known.
bool in_picture(const FilmStrip& film, PointMm at);

}  // namespace fogline
