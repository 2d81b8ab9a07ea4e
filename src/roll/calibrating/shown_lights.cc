#include "roll/calibrating/shown_lights.h"

#include "numerics/robust.h"

#include <algorithm>
#include <cmath>
#include <vector>

namespace fogline {

namespace {

/// Share of an area's pixels at the top code from which its light isn't known.
constexpr double clipped_share_limit = 0.005;
/// Light must stand so many times above its own doubt.
constexpr double least_above_doubt = 3.0;
/// Standard deviation of rounding, in code steps (uniform distribution, JCGM 100 4.3.7).
constexpr double rounding = 0.289;
/// Codes of more bits than this don't matter for rounding.
constexpr int most_rounded_bits = 16;

double clipped_share_of(const ScanGrid& grid, const RegionPx& cells, int channel) {
  int clipped = 0;
  for (int y = cells.y; y < cells.y + cells.height; ++y) {
    for (int x = cells.x; x < cells.x + cells.width; ++x) {
      clipped += (grid.clipped.at(x, y) >> channel & 1) != 0 ? 1 : 0;
    }
  }
  return static_cast<double>(clipped) / (cells.width * cells.height);
}

double median_light(const ScanGrid& grid, const RegionPx& cells, int channel) {
  std::vector<double> light;
  for (int y = cells.y; y < cells.y + cells.height; ++y) {
    for (int x = cells.x; x < cells.x + cells.width; ++x) {
      light.push_back(static_cast<double>(grid.light.light(x, y, channel)));
    }
  }
  return median(light);
}

}  // namespace

EvenArea middle_of(const ScanGrid& grid) {
  const int width = grid.light.width();
  const int height = grid.light.height();
  const RegionPx middle{width / 3, height / 3, std::max(1, width / 3), std::max(1, height / 3)};
  EvenArea area;
  const double left = middle.x * grid.reduction;
  const double top = middle.y * grid.reduction;
  const double right = (middle.x + middle.width) * grid.reduction;
  const double bottom = (middle.y + middle.height) * grid.reduction;
  area.corners_px = {{{left, top}, {right, top}, {right, bottom}, {left, bottom}}};
  constexpr int parts = 4;
  for (int c = 0; c < grid.light.channels(); ++c) {
    const auto i = static_cast<std::size_t>(c);
    area.light[i] = median_light(grid, middle, c);
    area.clipped_share[i] = clipped_share_of(grid, middle, c);
    std::vector<double> lights;
    for (int part = 0; part < parts * parts; ++part) {
      const int part_width = std::max(1, middle.width / parts);
      const int part_height = std::max(1, middle.height / parts);
      const RegionPx cells{std::min(width - part_width, middle.x + part % parts * part_width),
                           std::min(height - part_height, middle.y + part / parts * part_height),
                           part_width, part_height};
      lights.push_back(median_light(grid, cells, c));
    }
    // The median of the parts scatters by 1.25 times what their mean would.
    area.light_doubt[i] = 1.25 * robust_location(lights).scale / parts;
  }
  return area;
}

ShownLight shown_light(const EvenArea& area, const ScanSource& source, double density,
                       double density_doubt) {
  ShownLight shown;
  shown.step.corners_px = area.corners_px;
  shown.step.reference_density = density;
  shown.density_doubt = density_doubt;
  const ScanInfo& info = source.info();
  const double code_step = std::pow(2.0, -std::min(info.bits, most_rounded_bits));
  for (int c = 0; c < info.channels; ++c) {
    const auto i = static_cast<std::size_t>(c);
    const double code = source.code_of(area.light[i], c);
    const double above = source.code_of(area.light[i] + area.light_doubt[i], c);
    shown.step.code[i] = code;
    shown.code_doubt[i] = std::hypot(above - code, rounding * code_step);
    if (area.clipped_share[i] > clipped_share_limit) {
      shown.step.left_out = fact_of(Unknown::step_clipped);
    } else if (!shown.step.left_out && !(code > least_above_doubt * shown.code_doubt[i])) {
      shown.step.left_out = fact_of(Unknown::step_without_light);
    }
  }
  return shown;
}

}  // namespace fogline
