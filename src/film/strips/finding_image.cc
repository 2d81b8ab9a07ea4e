#include "film/strips/finding_image.h"

#include "numerics/robust.h"

#include <fogline/base/quantity.h>

#include <algorithm>
#include <cmath>
#include <vector>

namespace fogline {

namespace {

/// Log light is held to this range: beyond it lies noise, not film.
constexpr float lowest_log_light = -0.3F;
constexpr float highest_log_light = 4.0F;
/// Share of pixels taken as brighter than the lamp (dust reflections, overshoot of sharpening).
constexpr double above_lamp_share = 0.001;
/// Light of a turned-over picture is 1 - light of the root code: roughly what a scanner's own
/// turning over does on its display curve.
constexpr float root_full = 65535.0F;

float light_seen(const PerChannel<float>& light, int channels, FindingLight seen) {
  const bool one_channel =
      seen == FindingLight::red || seen == FindingLight::green || seen == FindingLight::blue;
  if (!one_channel || channels == 1) {
    return visual_from_channels(light, channels);
  }
  return light[static_cast<std::size_t>(seen) - static_cast<std::size_t>(FindingLight::red)];
}

cv::Mat1f mean_light(const ScanGrid& grid, int step, FindingLight seen) {
  const int width = grid.light.width() / step;
  const int height = grid.light.height() / step;
  const int channels = grid.light.channels();
  cv::Mat1f mean(height, width);
  const auto cells = static_cast<float>(step * step);
  for (int y = 0; y < height; ++y) {
    for (int x = 0; x < width; ++x) {
      float sum = 0.0F;
      for (int j = 0; j < step; ++j) {
        const std::uint16_t* row = grid.light.root_codes().row(y * step + j);
        const std::uint16_t* cell = row + static_cast<std::ptrdiff_t>(x) * step * channels;
        for (int i = 0; i < step; ++i, cell += channels) {
          PerChannel<float> light{};
          for (int c = 0; c < channels; ++c) {
            float root = static_cast<float>(cell[c]) / root_full;
            root = seen == FindingLight::turned_over ? 1.0F - root : root;
            light[static_cast<std::size_t>(c)] = root * root;
          }
          sum += light_seen(light, channels, seen);
        }
      }
      mean(y, x) = sum / cells;
    }
  }
  return mean;
}

}  // namespace

FindingImage finding_image(const ScanGrid& grid, std::int64_t most_pixels, FindingLight seen) {
  const auto pixels =
      static_cast<double>(grid.light.width()) * static_cast<double>(grid.light.height());
  const int step = std::max(
      1, static_cast<int>(std::ceil(std::sqrt(pixels / static_cast<double>(most_pixels)))));
  FindingImage image;
  image.scan_px = static_cast<double>(step) * grid.reduction;
  image.log_light = mean_light(grid, step, seen);

  std::vector<double> sample;
  constexpr int sample_stride = 7;  // a prime, so that no pattern of the film is sampled in step
  for (int i = 0; i < static_cast<int>(image.log_light.total()); i += sample_stride) {
    sample.push_back(
        static_cast<double>(image.log_light(i / image.log_light.cols, i % image.log_light.cols)));
  }
  const auto lamp = static_cast<float>(std::max(1e-6, percentile(sample, 1.0 - above_lamp_share)));
  for (float& value : cv::Mat1f(image.log_light)) {
    const float log_light = -std::log10(std::max(value, 1e-9F) / lamp);
    value = std::clamp(log_light, lowest_log_light, highest_log_light);
  }
  return image;
}

}  // namespace fogline
