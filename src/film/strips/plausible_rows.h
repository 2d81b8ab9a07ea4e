#pragma once

#include "film/strips/finding_image.h"
#include "film/strips/perforation_rows.h"

#include <vector>

namespace fogline {

/// Millimetres a finding-image pixel by a row's own pitch.
double mm_per_px(const HoleRow& row);

/// Log light in the holes of a row.
double hole_level(const HoleRow& row);

/// Log light along a row at a distance across from its middle line, mm; empty where the line leaves
/// the image.
std::vector<double> line_values(const FindingImage& image, const HoleRow& row, double offset_mm);

/// How far pitches of rows of one scan may differ, share: a row whose pitch is off by more is
/// something else.
inline constexpr double same_scale_share = 0.08;

/// Whether two rows lie as the rows of one strip do, the first at smaller across position: side by
/// side, of one pitch, at the film's distance.
bool are_pair(const HoleRow& low, const HoleRow& high);

/// Rows of spots that can be perforations: uniform light in them and between them, nothing much
/// brighter near, no wider than a hole, one lamp and one scale for all. Along the axis on which the
/// film runs.
std::vector<HoleRow> plausible_rows(const FindingImage& image);

}  // namespace fogline
