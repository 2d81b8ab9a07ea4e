// Stray light changes slowly, so it is worked out on cells of about half a millimetre and laid
// over the picture by interpolation. What lies beyond the picture is taken as its border repeated.

#include "simulator/cells.h"
#include "simulator/filters.h"
#include "simulator/scanner.h"

#include <algorithm>
#include <cmath>

namespace filmsim {
namespace {

constexpr double kCellMm = 0.5;

void blur_cells(Plane& cells, double sd_cells, const GlareSettings& settings) {
  const double along = sd_cells * std::sqrt(settings.aspect);
  const double across = sd_cells / std::sqrt(settings.aspect);
  const double x = settings.sensor_line_along_x ? along : across;
  const double y = settings.sensor_line_along_x ? across : along;
  wide_blur(cells, x, y);
}

}  // namespace

void add_glare(Plane& light, const GlareSettings& settings, double pixels_per_mm) {
  if (settings.share <= 0.0) return;
  const int cell = std::max(1, static_cast<int>(std::lround(kCellMm * pixels_per_mm)));
  const double cells_per_mm = pixels_per_mm / cell;
  Plane narrow = cell_means(light, cell);
  Plane wide = narrow;
  blur_cells(narrow, settings.narrow_sd_mm * cells_per_mm, settings);
  blur_cells(wide, settings.wide_sd_mm * cells_per_mm, settings);
  const auto part = static_cast<float>(settings.narrow_part);
  for (std::size_t i = 0; i < wide.values.size(); ++i) {
    wide.values[i] += part * (narrow.values[i] - wide.values[i]);
  }
  mix_in(light, wide, cell, static_cast<float>(settings.share));
}

}  // namespace filmsim
