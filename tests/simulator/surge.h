// Streaks from the holes: developer streams through them and brings fresh solution, so density
// that is there already grows; strongest at the hole's inner edge, fading into the picture.
#pragma once

#include "simulator/film_planes.h"

#include <vector>

namespace filmsim {

/// Density that surge adds where development alone gave `net`.
float surge_at(const StripPlan& plan, const StripGeometry& geometry, Point film_mm, float net);

/// Streaks that show, one for each hole beside which density grew by 0.01 or more on average.
std::vector<DrawnMark> visible_surge(const FilmPlanes& planes, const Scenario& scenario,
                                     const CameraGeometry& camera,
                                     const std::vector<StripGeometry>& geometries);

}  // namespace filmsim
