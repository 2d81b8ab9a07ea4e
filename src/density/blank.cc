#include "density/blank.h"

#include <algorithm>
#include <cmath>

namespace fogline {

namespace {

constexpr float darkest_share = 0.01F;

/// Bilinear light of the blank at a place given as shares of width and height.
float blank_light(const LightRaster& blank, double across, double down, int channel) {
  const double x = std::clamp(across * blank.width() - 0.5, 0.0, blank.width() - 1.0);
  const double y = std::clamp(down * blank.height() - 0.5, 0.0, blank.height() - 1.0);
  const int x0 = static_cast<int>(x);
  const int y0 = static_cast<int>(y);
  const int x1 = std::min(x0 + 1, blank.width() - 1);
  const int y1 = std::min(y0 + 1, blank.height() - 1);
  const auto fx = static_cast<float>(x - x0);
  const auto fy = static_cast<float>(y - y0);
  const float top = blank.light(x0, y0, channel) * (1.0F - fx) + blank.light(x1, y0, channel) * fx;
  const float low = blank.light(x0, y1, channel) * (1.0F - fx) + blank.light(x1, y1, channel) * fx;
  return top * (1.0F - fy) + low * fy;
}

double clipped_share_of(const ScanGrid& blank) {
  double greatest = 0.0;
  for (int c = 0; c < blank.light.channels(); ++c) {
    const std::vector<std::uint8_t>& bits = blank.clipped.samples();
    const auto most = static_cast<std::uint8_t>(1U << static_cast<unsigned>(c + 4));
    const auto count = std::count_if(bits.begin(), bits.end(),
                                     [&](std::uint8_t bit) { return (bit & most) != 0; });
    greatest = std::max(greatest, static_cast<double>(count) / static_cast<double>(bits.size()));
  }
  return greatest;
}

}  // namespace

BlankLight divide_by_blank(ScanGrid& grid, const ScanGrid& blank) {
  BlankLight result;
  result.clipped_share = clipped_share_of(blank);
  const int width = grid.light.width();
  const int height = grid.light.height();
  for (int c = 0; c < grid.light.channels(); ++c) {
    float level = 0.0F;
    for (int y = 0; y < blank.light.height(); ++y) {
      for (int x = 0; x < blank.light.width(); ++x) {
        level = std::max(level, blank.light.light(x, y, c));
      }
    }
    result.level[static_cast<std::size_t>(c)] = static_cast<double>(level);
    for (int y = 0; y < height && level > 0.0F; ++y) {
      for (int x = 0; x < width; ++x) {
        const float bare = blank_light(blank.light, (x + 0.5) / width, (y + 0.5) / height, c);
        const float share = std::max(bare / level, darkest_share);
        grid.light.set_light(x, y, c, grid.light.light(x, y, c) / share);
      }
    }
  }
  return result;
}

}  // namespace fogline
