#include "film/wedges/find_wedges.h"

#include <fogline/base/raster.h>

#include <algorithm>
#include <cmath>
#include <limits>

namespace fogline {

namespace {

/// Areas are read well inside the steps: the film goes on this much further than they do, as a part
/// of their size.
constexpr double margin_part = 0.5;

/// A range of places along one direction.
struct Range {
  double begin = std::numeric_limits<double>::infinity();
  double end = -std::numeric_limits<double>::infinity();

  void add(double place) {
    begin = std::min(begin, place);
    end = std::max(end, place);
  }
};

}  // namespace

std::vector<PointPx> outline_of(const FoundWedge& wedge, int slots_before, int slots_after) {
  const PointPx first = middle_of(wedge.steps.front().corners_px);
  const PointPx last = middle_of(wedge.steps.back().corners_px);
  const double length = std::hypot(last.x - first.x, last.y - first.y);
  const PointPx along{(last.x - first.x) / length, (last.y - first.y) / length};
  const double pitch = length / (wedge.steps.back().slot - wedge.steps.front().slot);
  Range places;
  Range sides;
  for (const WedgeStep& step : wedge.steps) {
    for (const PointPx& corner : step.corners_px) {
      const PointPx off{corner.x - first.x, corner.y - first.y};
      places.add(off.x * along.x + off.y * along.y);
      sides.add(off.y * along.x - off.x * along.y);
    }
  }
  const double margin = margin_part * (sides.end - sides.begin);
  const double begin = places.begin - (margin_part + slots_before) * pitch;
  const double end = places.end + (margin_part + slots_after) * pitch;
  const auto at = [&](double place, double side) {
    return PointPx{first.x + place * along.x - side * along.y,
                   first.y + place * along.y + side * along.x};
  };
  return {at(begin, sides.begin - margin), at(end, sides.begin - margin),
          at(end, sides.end + margin), at(begin, sides.end + margin)};
}

}  // namespace fogline
