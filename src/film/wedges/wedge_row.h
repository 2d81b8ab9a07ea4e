#pragma once

#include "film/wedges/wedge_chains.h"

#include <fogline/base/raster.h>

#include <optional>
#include <vector>

#include <opencv2/core.hpp>

namespace fogline {

/// A row of steps laid on a straight line, in pixels of the finding image.
struct WedgeRow {
  /// Middle of slot 0 and unit vectors along the row (towards the dark end) and across it.
  PointPx origin;
  PointPx along;
  PointPx across;
  /// Places of the steps along the row from the origin, and their slots.
  std::vector<double> places;
  std::vector<int> slots;
  /// Length of a step along the row and size across it; distance from step to step, 0 where uneven.
  double length = 0.0;
  double size = 0.0;
  double pitch = 0.0;
  bool touching = true;
  /// See FoundWedge.
  std::optional<int> unseen_dark_steps;

  [[nodiscard]] PointPx at(double place, double aside) const {
    return {origin.x + place * along.x + aside * across.x,
            origin.y + place * along.y + aside * across.y};
  }
};

/// Lays a chain on a line; where its pitch is even, fills steps in that weren't seen as even
/// patches (dirt, tape, small differences), within the row and beyond its ends.
WedgeRow lay_row(const PatchChain& chain, const cv::Mat1f& smooth);

}  // namespace fogline
