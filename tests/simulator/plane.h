// One number a pixel: the raster every step of the simulation works on.
#pragma once

#include <algorithm>
#include <cstddef>
#include <vector>

namespace filmsim {

struct Plane {
  int width = 0;
  int height = 0;
  std::vector<float> values;

  Plane() = default;
  Plane(int width_px, int height_px, float value = 0.0F)
      : width(width_px),
        height(height_px),
        values(static_cast<std::size_t>(width_px) * static_cast<std::size_t>(height_px), value) {}

  [[nodiscard]] std::size_t index(int x, int y) const {
    return static_cast<std::size_t>(y) * static_cast<std::size_t>(width) +
           static_cast<std::size_t>(x);
  }
  [[nodiscard]] float& at(int x, int y) { return values[index(x, y)]; }
  [[nodiscard]] float at(int x, int y) const { return values[index(x, y)]; }
  [[nodiscard]] float* row(int y) { return values.data() + index(0, y); }
  [[nodiscard]] const float* row(int y) const { return values.data() + index(0, y); }

  /// Bilinear value at (x, y) in pixels, pixel centres at whole numbers; clamped at the border.
  [[nodiscard]] float sample(float x, float y) const {
    const float cx = std::clamp(x, 0.0F, static_cast<float>(width - 1));
    const float cy = std::clamp(y, 0.0F, static_cast<float>(height - 1));
    const int x0 = std::min(static_cast<int>(cx), std::max(width - 2, 0));
    const int y0 = std::min(static_cast<int>(cy), std::max(height - 2, 0));
    const int x1 = std::min(x0 + 1, width - 1);
    const int y1 = std::min(y0 + 1, height - 1);
    const float fx = cx - static_cast<float>(x0);
    const float fy = cy - static_cast<float>(y0);
    const float top = at(x0, y0) + fx * (at(x1, y0) - at(x0, y0));
    const float bottom = at(x0, y1) + fx * (at(x1, y1) - at(x0, y1));
    return top + fy * (bottom - top);
  }
};

}  // namespace filmsim
