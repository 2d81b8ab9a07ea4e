// How much denser a directed light reads silver, by laws that no analyser was told.
#pragma once

#include "simulator/film_stock.h"

#include <string>

namespace filmsim {

enum class CallierLaw {
  kHyperbola,  ///< rises slowly towards its end, no exponential
  kCreep,      ///< rises with the logarithm of density and never ends
  kHump        ///< greatest at the knee, less again where grains overlap
};

struct ForeignCallier {
  CallierLaw law = CallierLaw::kHyperbola;
  Rgb excess = {0.0, 0.0, 0.0};  ///< factor less one where the law is at its height, 0 to 0.6
  double knee = 0.3;             ///< net density, 0.1 to 1
  bool fog_scatters = true;      ///< fog is silver and reads denser too
};

std::string callier_law_name(CallierLaw law);

/// Density that the scanner sees of net silver over fog, less the fog's own diffuse density. Rises
/// with the net density.
float seen_silver(float net_density, double fog, const ForeignCallier& callier,
                  std::size_t channel);

}  // namespace filmsim
