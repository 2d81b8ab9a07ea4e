#include "simulator/foreign_callier.h"

#include <algorithm>
#include <cmath>

namespace filmsim {
namespace {

// Share of the excess that a silver density gets.
float share_of_excess(float silver, const ForeignCallier& callier) {
  constexpr float kCreepsTo = 2.0F;  // density at which the creeping law has its stated excess
  const auto knee = static_cast<float>(callier.knee);
  switch (callier.law) {
    case CallierLaw::kHyperbola:
      return silver / (silver + knee);
    case CallierLaw::kCreep:
      return std::log1p(silver / knee) / std::log1p(kCreepsTo / knee);
    case CallierLaw::kHump:
      return silver / knee * std::exp(1.0F - silver / knee);
  }
  return 0.0F;
}

}  // namespace

std::string callier_law_name(CallierLaw law) {
  switch (law) {
    case CallierLaw::kHyperbola:
      return "hyperbola";
    case CallierLaw::kCreep:
      return "creep";
    case CallierLaw::kHump:
      return "hump";
  }
  return "unknown";
}

float seen_silver(float net_density, double fog, const ForeignCallier& callier,
                  std::size_t channel) {
  const float diffuse_fog = callier.fog_scatters ? static_cast<float>(fog) : 0.0F;
  const float silver = net_density + diffuse_fog;
  const float counted = std::max(silver, 0.0F);  // grain may fall below nothing
  const auto excess = static_cast<float>(callier.excess[channel]);
  return silver * (1.0F + excess * share_of_excess(counted, callier)) - diffuse_fog;
}

}  // namespace filmsim
