// A device whose codes aren't the light they claim to be: what its electronics and software bend.
#pragma once

#include "simulator/film_stock.h"
#include "simulator/plane.h"
#include "simulator/random.h"

#include <vector>

namespace filmsim {

struct ResponseShape {
  bool straight = true;         ///< nothing is bent
  Rgb power = {1.0, 1.0, 1.0};  ///< slope of log signal at full scale, per channel
  double curl = 0.0;            ///< change of that slope over three decades, toe or lift
  double shoulder = 0.0;        ///< bright light flattens
  double floor = 0.0;           ///< share of full scale added after all else
};

/// The signal (share of full scale) after the device's own bending. Rises with the signal.
double bent(double signal, const ResponseShape& shape, std::size_t channel);

void bend(std::vector<Plane>& signal, const ResponseShape& shape);

/// Linear devices, powers of 0.6 to 1.6, curls, shoulders, floors; channels differ by a few
/// percent.
ResponseShape sample_response(Random& random);

}  // namespace filmsim
