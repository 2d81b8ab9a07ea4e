#include "simulator/mask_shade.h"

#include "simulator/cells.h"
#include "simulator/filters.h"

#include <algorithm>
#include <cmath>

namespace filmsim {

void shade_by_mask(Plane& light, const Plane& open, const MaskShade& shade, double pixels_per_mm) {
  if (shade.loss <= 0.0) return;
  constexpr double kCellsPerReach = 4.0;
  const int cell =
      std::max(1, static_cast<int>(std::lround(shade.reach_mm * pixels_per_mm / kCellsPerReach)));
  Plane cells = cell_means(open, cell);
  const double sd_cells = shade.reach_mm * pixels_per_mm / cell;
  wide_blur(cells, sd_cells, sd_cells);
  // At a straight edge half of the cone is gone.
  const auto loss = static_cast<float>(2.0 * shade.loss);
  const float inverse = 1.0F / static_cast<float>(cell);
  for (int y = 0; y < light.height; ++y) {
    float* row = light.row(y);
    const float cy = (static_cast<float>(y) + 0.5F) * inverse - 0.5F;
    for (int x = 0; x < light.width; ++x) {
      const float seen = cells.sample((static_cast<float>(x) + 0.5F) * inverse - 0.5F, cy);
      row[x] *= 1.0F - loss * std::min(1.0F - seen, 0.5F);
    }
  }
}

}  // namespace filmsim
