// Points and boxes, in millimetres or pixels as the name of the variable says.
#pragma once

#include <algorithm>
#include <array>
#include <cmath>

namespace filmsim {

struct Point {
  double x = 0.0;
  double y = 0.0;
};

struct Box {
  double x = 0.0;
  double y = 0.0;
  double width = 0.0;
  double height = 0.0;
};

/// Distance of (x, y) to the border of a box about the origin with rounded corners; negative
/// inside. (The usual signed distance: outside part plus inside part less the radius.)
inline double rounded_box_distance(double x, double y, double half_width, double half_height,
                                   double radius) {
  const double dx = std::abs(x) - half_width + radius;
  const double dy = std::abs(y) - half_height + radius;
  const double outside = std::hypot(std::max(dx, 0.0), std::max(dy, 0.0));
  return outside + std::min(std::max(dx, dy), 0.0) - radius;
}

/// Share of a pixel that lies inside an edge at that distance (negative inside), in [0, 1].
inline float covered_share(double distance_px) {
  return static_cast<float>(std::clamp(0.5 - distance_px, 0.0, 1.0));
}

}  // namespace filmsim
