#include "sensitometry/read_exposed_area.h"

#include "numerics/robust.h"

#include <algorithm>
#include <cmath>
#include <vector>

namespace fogline {

namespace {

constexpr double cell_mm = 1.0;
/// Of the cells' scatter so much is slow unevenness that doesn't average out (common practice, no
/// source), and neighbouring cells share the rest by about four.
constexpr double slow_part = 0.2;
constexpr double cells_a_sample = 4.0;
/// Stands for "no light left".
constexpr double darkest_density = 5.0;
constexpr double least_share_in_sight = 0.5;

}  // namespace

std::optional<ExposedArea> read_exposed_area(const DensityStrip& density, const FilmExtent& area) {
  const int left = density.column(area.along_begin_mm);
  const int right = density.column(area.along_end_mm);
  const int top = density.row(area.across_begin_mm);
  const int bottom = density.row(area.across_end_mm);
  const int cell = std::max(
      1, static_cast<int>(std::lround(std::min(
             {cell_mm * density.pixels_per_mm, 0.25 * (right - left), 0.25 * (bottom - top)}))));
  std::vector<double> cells;
  std::size_t pixels = 0;
  std::size_t seen = 0;
  for (int y = top; y + cell <= bottom; y += cell) {
    for (int x = left; x + cell <= right; x += cell) {
      double light = 0.0;
      int count = 0;
      for (int dy = 0; dy < cell; ++dy) {
        for (int dx = 0; dx < cell; ++dx) {
          const float value = density.visual.at(x + dx, y + dy);
          if (!std::isnan(value)) {
            light += std::pow(10.0, -std::min(darkest_density, static_cast<double>(value)));
            ++count;
          }
        }
      }
      pixels += static_cast<std::size_t>(cell) * static_cast<std::size_t>(cell);
      seen += static_cast<std::size_t>(count);
      if (2 * count >= cell * cell) {
        cells.push_back(-std::log10(light / count));
      }
    }
  }
  if (cells.empty() ||
      static_cast<double>(seen) < least_share_in_sight * static_cast<double>(pixels)) {
    return std::nullopt;
  }
  ExposedArea even;
  even.place = area;
  even.density = median(cells);
  constexpr double low_share = 0.1;
  constexpr double deviations_apart = 2.563;  // 10th to 90th percentile of a normal distribution
  even.spread = percentile(cells, 1.0 - low_share) - percentile(cells, low_share);
  const double deviation = even.spread / deviations_apart;
  const double samples = std::max(1.0, static_cast<double>(cells.size()) / cells_a_sample);
  even.doubt = std::hypot(deviation / std::sqrt(samples), slow_part * deviation);
  return even;
}

FilmExtent middle_of_frame(const FilmFrame& frame) {
  const double along = 0.25 * (frame.along_end_mm - frame.along_begin_mm);
  const double across = 0.25 * (frame.across_end_mm - frame.across_begin_mm);
  return {frame.along_begin_mm + along, frame.along_end_mm - along, frame.across_begin_mm + across,
          frame.across_end_mm - across};
}

}  // namespace fogline
