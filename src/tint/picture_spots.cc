#include "tint/picture_spots.h"

#include <algorithm>
#include <cmath>
#include <optional>

namespace fogline {

namespace {

std::optional<PerChannel<double>> mean_density(const DensityStrip& density, int x0, int y0,
                                               int side) {
  PerChannel<double> mean{};
  for (int y = y0; y < y0 + side; ++y) {
    for (int x = x0; x < x0 + side; ++x) {
      for (int c = 0; c < most_channels; ++c) {
        const float value = density.channels.at(x, y, c);
        if (!std::isfinite(value)) {
          return std::nullopt;
        }
        mean[static_cast<std::size_t>(c)] += static_cast<double>(value);
      }
    }
  }
  for (double& value : mean) {
    value /= side * side;
  }
  return mean;
}

}  // namespace

std::vector<PictureSpot> picture_spots(const DensityStrip& density, const FilmExtent& picture,
                                       double densest) {
  std::vector<PictureSpot> spots;
  const int side = std::max(1, static_cast<int>(picture_spot_mm * density.pixels_per_mm));
  const int x0 = density.column(picture.along_begin_mm);
  const int y0 = density.row(picture.across_begin_mm);
  const int columns = (density.column(picture.along_end_mm) - x0) / side;
  const int rows = (density.row(picture.across_end_mm) - y0) / side;
  for (int row = 0; row < rows; ++row) {
    for (int column = 0; column < columns; ++column) {
      const auto mean = mean_density(density, x0 + column * side, y0 + row * side, side);
      if (mean && (*mean)[0] < densest) {
        spots.push_back({*mean, column, row});
      }
    }
  }
  return spots;
}

}  // namespace fogline
