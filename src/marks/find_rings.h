#pragma once

#include "marks/mark_candidate.h"
#include "marks/mark_knowledge.h"
#include "marks/mark_tile.h"

#include <vector>

namespace fogline {

/// Fineness at which drying rings are looked for: rims are 0.2 to 0.8 mm broad.
inline constexpr double ring_pixels_per_mm = 8.0;

/// What parts a drop's rim from other closed lines.
struct RingSigns {
  double seen = 0.0;            ///< share of directions in which the rim shows
  double spread = 0.0;          ///< middle half of its heights over their median
  double alone = 0.0;           ///< evidence on the outline over that a little inside and outside
  double mean_radius_mm = 0.0;  ///< pictures hold many small closed lines, few large ones
  double mean_evidence = 0.0;   ///< of the outline's directions
  double twins = 0.0;           ///< other lines of the same size: windows have them, drops don't
};

/// A closed line that may be a drop's rim.
struct ClosedLine {
  MarkCandidate mark;
  RingSigns signs;
};

/// Log odds that it is one.
double ring_log_odds(const RingSigns& signs, const RingScore& score);

/// Closed denser lines of a drop's size and height; some of them several times.
std::vector<ClosedLine> closed_lines(const MarkTile& tile, const RingKnowledge& knowledge);

/// Drying rings: the closed lines, with their log odds.
std::vector<MarkCandidate> find_rings(const MarkTile& tile, const RingKnowledge& knowledge);

}  // namespace fogline
