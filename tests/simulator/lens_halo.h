// A soft lens: a halo about everything bright, whose tail falls with a power of distance and never
// ends as a Gaussian does.
#pragma once

#include "simulator/plane.h"

namespace filmsim {

struct LensHalo {
  double share = 0.0;      ///< of the light that is spread, 0 to 0.2
  double radius_mm = 1.0;  ///< of its core, 0.5 to 3
  /// Light at a distance falls as its power -(2 + tail) from the core on: 0.3 heavy, 1.5 light.
  double tail = 0.8;
};

/// Replaces the plane by (1 - share) L + share (K * L); borders are repeated.
void add_halo(Plane& light, const LensHalo& halo, double pixels_per_mm);

}  // namespace filmsim
