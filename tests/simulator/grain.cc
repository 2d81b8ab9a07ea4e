// Grain by Selwyn's law: the sd of density over an area goes as the root of density over area.

#include "simulator/film_planes.h"
#include "simulator/filters.h"
#include "simulator/random.h"

#include <cmath>

namespace filmsim {

void add_grain(FilmPlanes& planes, const Scenario& scenario) {
  if (scenario.strips.empty()) return;
  const FilmStock& first = scenario.strips.front().stock;
  const double blur_px = first.grain_um * 1e-3 * scenario.pixels_per_mm;
  const Plane noise = correlated_noise(planes.net.width, planes.net.height, blur_px,
                                       derived_seed(scenario.seed, 21));
  for (std::size_t i = 0; i < noise.values.size(); ++i) {
    if (planes.strip[i] == 0) continue;
    const FilmStock& stock = scenario.strips[planes.strip[i] - 1U].stock;
    // Over one pixel, an area of 1 / (pixels per mm)^2.
    const auto per_root = static_cast<float>(stock.granularity * scenario.pixels_per_mm);
    const float silver = std::max(0.0F, planes.net.values[i] + static_cast<float>(stock.fog));
    const float grain = per_root * std::sqrt(silver) * noise.values[i];
    planes.net.values[i] += grain;
    planes.clean_net.values[i] += grain;
  }
}

}  // namespace filmsim
