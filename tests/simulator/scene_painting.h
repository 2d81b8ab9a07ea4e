// Brushes for invented pictures. Values are log luminance in arbitrary units, 0 black, 1 white.
#pragma once

#include "simulator/plane.h"
#include "simulator/random.h"

#include <vector>

namespace filmsim {

/// A picture in the making; lengths are shares of its height.
struct Canvas {
  Plane plane;
  Random random;

  [[nodiscard]] double unit() const { return plane.height; }
};

/// Fills below a ragged line about `level` (share of the height from the top).
void paint_ridge(Canvas& canvas, double level, double raggedness, double roughness, double value,
                 double texture);
void paint_box(Canvas& canvas, double x, double y, double width, double height, double value);
/// Soft-edged ellipse; `shade` makes the right side darker by that much.
void paint_ellipse(Canvas& canvas, double x, double y, double radius_x, double radius_y,
                   double value, double shade);
/// A lamp: a disc of white and a glow falling with the square of distance.
void paint_lamp(Canvas& canvas, double x, double y, double radius, double glow);
void add_texture(Canvas& canvas, double coarsest, double roughness, double amount);

}  // namespace filmsim
