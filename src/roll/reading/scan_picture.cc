#include "roll/reading/scan_picture.h"

#include "numerics/robust.h"

#include <algorithm>
#include <cmath>
#include <vector>

namespace fogline {

namespace {

/// Longest side of the picture: what a page shows sharply, and small enough to travel in it.
constexpr int longest_side_px = 1600;
constexpr double above_white_share = 0.002;

std::uint8_t display_code(float light) {
  constexpr float linear_end = 0.0031308F;
  const float code =
      light <= linear_end ? 12.92F * light : 1.055F * std::pow(light, 1.0F / 2.4F) - 0.055F;
  return static_cast<std::uint8_t>(std::lround(255.0F * std::clamp(code, 0.0F, 1.0F)));
}

}  // namespace

ScanPicture scan_picture(const ScanGrid& grid) {
  const LightRaster& light = grid.light;
  const int longest = std::max(light.width(), light.height());
  const int step = std::max(1, (longest + longest_side_px - 1) / longest_side_px);
  const int width = std::max(1, light.width() / step);
  const int height = std::max(1, light.height() / step);
  const int channels = light.channels();
  Raster<float> small(width, height, channels);
  std::vector<double> sample;
  constexpr int sample_stride = 13;
  for (int y = 0; y < height; ++y) {
    for (int x = 0; x < width; ++x) {
      for (int c = 0; c < channels; ++c) {
        float sum = 0.0F;
        for (int j = 0; j < step; ++j) {
          for (int i = 0; i < step; ++i) {
            sum += light.light(x * step + i, y * step + j, c);
          }
        }
        small.at(x, y, c) = sum / static_cast<float>(step * step);
        if ((x + y * width) % sample_stride == 0) {
          sample.push_back(static_cast<double>(small.at(x, y, c)));
        }
      }
    }
  }
  const auto white =
      static_cast<float>(std::max(1e-4, percentile(sample, 1.0 - above_white_share)));
  ScanPicture picture;
  picture.scan_px_per_pixel = static_cast<double>(step) * grid.reduction;
  picture.pixels = Raster<std::uint8_t>(width, height, channels);
  for (std::size_t i = 0; i < small.samples().size(); ++i) {
    picture.pixels.samples()[i] = display_code(small.samples()[i] / white);
  }
  return picture;
}

}  // namespace fogline
