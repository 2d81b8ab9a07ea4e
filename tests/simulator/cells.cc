#include "simulator/cells.h"

#include <algorithm>

namespace filmsim {

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

}  // namespace filmsim
