// A mask or a holder takes part of the lamp's cone away from the film beside it: the light falls by
// a share, near the edge most. What stray light adds is another thing.
#pragma once

#include "simulator/plane.h"

namespace filmsim {

struct MaskShade {
  double loss = 0.0;  ///< share of the light lost right at a straight edge, 0 to 0.35
  double reach_mm = 2.0;
};

/// `open` is the share of each pixel inside the holder's windows.
void shade_by_mask(Plane& light, const Plane& open, const MaskShade& shade, double pixels_per_mm);

}  // namespace filmsim
