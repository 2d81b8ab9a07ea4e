#pragma once

#include "film/strips/perforation_candidates.h"

#include <vector>

namespace fogline {

/// One perforation of a row: its number in the row's lattice and the spot seen there.
struct RowHole {
  int index = 0;
  BrightSpot spot;
};

/// A row of perforations: spots of one size at one pitch along a nearly straight line that runs
/// near an image axis. Finding-image pixels.
struct HoleRow {
  bool along_x = true;
  double pitch_px = 0.0;
  /// Sorted along the film; indices may skip (hidden or torn holes).
  std::vector<RowHole> holes;

  /// Position along and across the film's axis of a spot of this row.
  [[nodiscard]] double along(const BrightSpot& spot) const { return along_x ? spot.x : spot.y; }
  [[nodiscard]] double across(const BrightSpot& spot) const { return along_x ? spot.y : spot.x; }
  [[nodiscard]] double along_size(const BrightSpot& spot) const {
    return along_x ? spot.width : spot.height;
  }
  [[nodiscard]] double across_size(const BrightSpot& spot) const {
    return along_x ? spot.height : spot.width;
  }
  /// Straight line through the row: across position at an along position.
  [[nodiscard]] double across_at(double along_px) const;
  /// Median size across of the row's holes.
  [[nodiscard]] double median_across_size() const;
};

/// Finds rows among spots for film that runs along x or along y. What makes a row: neighbours at
/// pitch over hole length 4.750 / 1.981 = 2.40, equal pitch, equal size, one line, three holes at
/// least. Longest rows first; no spot in two rows.
std::vector<HoleRow> hole_rows(const std::vector<BrightSpot>& spots, bool along_x);

}  // namespace fogline
