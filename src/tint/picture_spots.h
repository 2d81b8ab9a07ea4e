#pragma once

#include "density/density_strip.h"

#include <fogline/base/quantity.h>

#include <vector>

namespace fogline {

/// Mean density per channel of a spot of 1 mm, and where it lies among the picture's spots.
struct PictureSpot {
  PerChannel<double> density{};
  int column = 0;
  int row = 0;
};

/// Side of a spot, mm: 100 pixels of 0.1 mm bring noise to a tenth, and pictures still vary.
inline constexpr double picture_spot_mm = 1.0;

/// The spots of one picture, row by row, that have light in every channel and are thinner than
/// `densest` in red. The strip must be in colour.
std::vector<PictureSpot> picture_spots(const DensityStrip& density, const FilmExtent& picture,
                                       double densest);

}  // namespace fogline
