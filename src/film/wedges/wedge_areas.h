#pragma once

#include "film/wedges/find_wedges.h"
#include "film/wedges/wedge_row.h"

namespace fogline {

/// Reads every step of a row on the scan's own grid: the middle of its area, a fifth of it left out
/// on each side.
std::vector<WedgeStep> read_steps(const ScanGrid& grid, const WedgeRow& row, double scan_px);

/// Finds the bare light nearest to a row that is wide enough and even, and reads it into `wedge`;
/// leaves it out where nothing in sight is brighter than the row's lightest step.
void add_bare_light(FoundWedge& wedge, const ScanGrid& grid, const WedgeRow& row,
                    const cv::Mat1f& smooth, const cv::Mat1f& uneven, double scan_px);

}  // namespace fogline
