#pragma once

#include "film/film_layout.h"

#include <fogline/base/raster.h>

#include <array>

namespace fogline {

/// Corners of a rectangle on the film, stored pixels, clockwise from top left.
std::array<PointPx, 4> corners_of(const FilmExtent& extent, const FilmMap& map);

/// The upright box around four points.
BoxPx box_around(const std::array<PointPx, 4>& corners);

}  // namespace fogline
