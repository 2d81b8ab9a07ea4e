// A makeshift lamp: bright in one place, weak in the corners, with hot spots, seen by a lens that
// darkens its own corners.
#pragma once

#include "simulator/film_stock.h"
#include "simulator/geometry.h"
#include "simulator/plane.h"

#include <vector>

namespace filmsim {

/// Positions are shares of the picture from its middle, -0.5 to 0.5; widths are shares of its
/// longer side.
struct HotSpot {
  Point middle;
  double width = 0.1;
  double gain = 0.2;  ///< light added, share of the lamp's own; negative: a shadow
};

struct LampFallOff {
  double ratio = 1.0;  ///< brightest over darkest place of the lamp, 1 to 4
  Point middle;        ///< of the bulge
  double power = 2.0;  ///< how the light falls with distance: 1 a cone, 4 a plateau
  double aspect = 1.0;
  double vignetting = 0.0;  ///< light that the lens loses in the corners, 0 to 0.6
  std::vector<HotSpot> hot_spots;
  Rgb colour_drift = {0.0, 0.0, 0.0};  ///< channels fall off this much more, share of log light
};

/// Light of the bare lamp at a place, 1 at the most but for hot spots.
double lamp_light(const LampFallOff& lamp, double x, double y, std::size_t channel);

void light_by_lamp(std::vector<Plane>& light, const LampFallOff& lamp);

}  // namespace filmsim
