#include "roll/reading/place_on_scan.h"

#include <algorithm>
#include <cmath>

namespace fogline {

std::array<PointPx, 4> corners_of(const FilmExtent& extent, const FilmMap& map) {
  std::array<PointPx, 4> corners{
      map.scan_from_film({extent.along_begin_mm, extent.across_begin_mm}),
      map.scan_from_film({extent.along_end_mm, extent.across_begin_mm}),
      map.scan_from_film({extent.along_end_mm, extent.across_end_mm}),
      map.scan_from_film({extent.along_begin_mm, extent.across_end_mm})};
  const bool upright =
      std::abs(corners[1].y - corners[0].y) > std::abs(corners[1].x - corners[0].x);
  if (upright) {
    // Along runs down, across runs left: the corner at the end of across and begin of along is the
    // top left one.
    std::rotate(corners.begin(), corners.begin() + 3, corners.end());
  }
  return corners;
}

BoxPx box_around(const std::array<PointPx, 4>& corners) {
  const auto by_x = [](const PointPx& a, const PointPx& b) { return a.x < b.x; };
  const auto by_y = [](const PointPx& a, const PointPx& b) { return a.y < b.y; };
  const auto [left, right] = std::minmax_element(corners.begin(), corners.end(), by_x);
  const auto [top, bottom] = std::minmax_element(corners.begin(), corners.end(), by_y);
  return {left->x, top->y, right->x - left->x, bottom->y - top->y};
}

}  // namespace fogline
