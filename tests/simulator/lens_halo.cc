#include "simulator/lens_halo.h"

#include "simulator/cells.h"
#include "simulator/filters.h"

#include <algorithm>
#include <cmath>

namespace filmsim {

// A power law as a sum of Gaussians, each twice as wide as the one before.
void add_halo(Plane& light, const LensHalo& halo, double pixels_per_mm) {
  constexpr double kCellsPerRadius = 2.0;
  constexpr int kWidths = 6;
  if (halo.share <= 0.0) return;
  const int cell =
      std::max(1, static_cast<int>(std::lround(halo.radius_mm * pixels_per_mm / kCellsPerRadius)));
  const Plane narrow = cell_means(light, cell);
  Plane spread(narrow.width, narrow.height);
  double weights = 0.0;
  for (int i = 0; i < kWidths; ++i) weights += std::exp2(-halo.tail * i);
  for (int i = 0; i < kWidths; ++i) {
    Plane blurred = narrow;
    const double sd_cells = std::exp2(i) * halo.radius_mm * pixels_per_mm / cell;
    wide_blur(blurred, sd_cells, sd_cells);
    const auto weight = static_cast<float>(std::exp2(-halo.tail * i) / weights);
    for (std::size_t p = 0; p < spread.values.size(); ++p) {
      spread.values[p] += weight * blurred.values[p];
    }
  }
  mix_in(light, spread, cell, static_cast<float>(halo.share));
}

}  // namespace filmsim
