// Stray light changes slowly, so it is worked out on cells of about half a millimetre and laid
// over the picture by interpolation. What lies beyond the picture is taken as its border repeated.

#include "simulator/filters.h"
#include "simulator/scanner.h"

#include <algorithm>
#include <cmath>

namespace filmsim {
namespace {

constexpr double kCellMm = 0.5;

Plane cell_means(const Plane& light, int cell) {
  Plane cells((light.width + cell - 1) / cell, (light.height + cell - 1) / cell);
  for (int cy = 0; cy < cells.height; ++cy) {
    const int y1 = std::min((cy + 1) * cell, light.height);
    for (int cx = 0; cx < cells.width; ++cx) {
      const int x1 = std::min((cx + 1) * cell, light.width);
      double sum = 0.0;
      for (int y = cy * cell; y < y1; ++y) {
        for (int x = cx * cell; x < x1; ++x) sum += light.at(x, y);
      }
      cells.at(cx, cy) = static_cast<float>(sum / ((y1 - cy * cell) * (x1 - cx * cell)));
    }
  }
  return cells;
}

void blur_cells(Plane& cells, double sd_cells, const GlareSettings& settings) {
  const double along = sd_cells * std::sqrt(settings.aspect);
  const double across = sd_cells / std::sqrt(settings.aspect);
  const double x = settings.sensor_line_along_x ? along : across;
  const double y = settings.sensor_line_along_x ? across : along;
  wide_blur(cells, x, y);
}

// light = (1 - share) light + share cells, the cells read between their middles.
void mix_in(Plane& light, const Plane& cells, int cell, float share) {
  const float inverse = 1.0F / static_cast<float>(cell);
  std::vector<float> line(static_cast<std::size_t>(cells.width));
  for (int y = 0; y < light.height; ++y) {
    const float cy = (static_cast<float>(y) + 0.5F) * inverse - 0.5F;
    for (int cx = 0; cx < cells.width; ++cx) {
      line[static_cast<std::size_t>(cx)] = cells.sample(static_cast<float>(cx), cy);
    }
    float* row = light.row(y);
    const float last = static_cast<float>(cells.width - 1);
    for (int x = 0; x < light.width; ++x) {
      const float cx = std::clamp((static_cast<float>(x) + 0.5F) * inverse - 0.5F, 0.0F, last);
      const auto i = static_cast<std::size_t>(cx);
      const float right = line[std::min(i + 1, line.size() - 1)];
      const float spread = line[i] + (cx - static_cast<float>(i)) * (right - line[i]);
      row[x] += share * (spread - row[x]);
    }
  }
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
