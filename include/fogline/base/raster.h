#pragma once

#include <algorithm>
#include <array>
#include <cmath>
#include <cstddef>
#include <cstdint>
#include <vector>

namespace fogline {

/// A point of the image as stored: origin at the top left corner of the top left pixel, x to the
/// right, y down, in stored pixels (not reduced ones).
struct PointPx {
  double x = 0.0;
  double y = 0.0;

  friend bool operator==(const PointPx&, const PointPx&) = default;
};

/// Middle of a four-cornered area: the mean of its corners.
constexpr PointPx middle_of(const std::array<PointPx, 4>& corners) {
  PointPx middle;
  for (const PointPx& corner : corners) {
    middle.x += 0.25 * corner.x;
    middle.y += 0.25 * corner.y;
  }
  return middle;
}

/// A point on the film: millimetres along the film and across it. Across is 0 on the middle line
/// of the strip and grows to the right of the direction of growing `along_mm` (as y grows down
/// when along runs to the right). The origin of `along_mm` is each strip's own.
struct PointMm {
  double along_mm = 0.0;
  double across_mm = 0.0;

  friend bool operator==(const PointMm&, const PointMm&) = default;
};

/// An upright box of the image as stored, in stored pixels.
struct BoxPx {
  double x = 0.0;
  double y = 0.0;
  double width = 0.0;
  double height = 0.0;

  friend bool operator==(const BoxPx&, const BoxPx&) = default;
};

/// Whole pixels of the image as stored: columns [x, x + width), rows [y, y + height).
struct RegionPx {
  int x = 0;
  int y = 0;
  int width = 0;
  int height = 0;

  friend bool operator==(const RegionPx&, const RegionPx&) = default;
};

/// A rectangular grid of samples, row by row, channels interleaved. Pixel (x, y) covers the square
/// [x, x + 1) x [y, y + 1) of the image plane, so its centre lies at (x + 0.5, y + 0.5).
template <typename T>
class Raster {
 public:
  Raster() = default;
  Raster(int width, int height, int channels = 1, T fill = T{})
      : width_(width),
        height_(height),
        channels_(channels),
        samples_(static_cast<std::size_t>(width) * static_cast<std::size_t>(height) *
                     static_cast<std::size_t>(channels),
                 fill) {}

  [[nodiscard]] int width() const { return width_; }
  [[nodiscard]] int height() const { return height_; }
  [[nodiscard]] int channels() const { return channels_; }
  [[nodiscard]] bool empty() const { return samples_.empty(); }
  [[nodiscard]] bool contains(int x, int y) const {
    return x >= 0 && y >= 0 && x < width_ && y < height_;
  }

  T& at(int x, int y, int channel = 0) { return samples_[index(x, y, channel)]; }
  const T& at(int x, int y, int channel = 0) const { return samples_[index(x, y, channel)]; }

  T* row(int y) { return samples_.data() + index(0, y, 0); }
  const T* row(int y) const { return samples_.data() + index(0, y, 0); }

  std::vector<T>& samples() { return samples_; }
  const std::vector<T>& samples() const { return samples_; }

  friend bool operator==(const Raster&, const Raster&) = default;

 private:
  [[nodiscard]] std::size_t index(int x, int y, int channel) const {
    return (static_cast<std::size_t>(y) * static_cast<std::size_t>(width_) +
            static_cast<std::size_t>(x)) *
               static_cast<std::size_t>(channels_) +
           static_cast<std::size_t>(channel);
  }

  int width_ = 0;
  int height_ = 0;
  int channels_ = 1;
  std::vector<T> samples_;
};

/// Linear light from 0 to 1, kept in 16 bits as its square root. Photon noise grows as the square
/// root of light, so this spreads the rounding as the noise is spread: a step is below 0.0002 in
/// density up to D 2, 0.0004 at D 3 and 0.0014 at D 4, at half the memory of float.
class LightRaster {
 public:
  LightRaster() = default;
  LightRaster(int width, int height, int channels) : codes_(width, height, channels) {}

  [[nodiscard]] int width() const { return codes_.width(); }
  [[nodiscard]] int height() const { return codes_.height(); }
  [[nodiscard]] int channels() const { return codes_.channels(); }
  [[nodiscard]] bool empty() const { return codes_.empty(); }

  /// Linear light of a grid pixel, 0 to 1.
  [[nodiscard]] float light(int x, int y, int channel) const {
    const float root = static_cast<float>(codes_.at(x, y, channel)) * (1.0F / 65535.0F);
    return root * root;
  }

  /// Stores linear light; values outside 0 to 1 are held at the ends.
  void set_light(int x, int y, int channel, float light) {
    const float root = std::sqrt(std::clamp(light, 0.0F, 1.0F));
    codes_.at(x, y, channel) = static_cast<std::uint16_t>(std::lround(root * 65535.0F));
  }

  /// The square roots, 0 to 65535, row by row: for code that works on whole rows.
  [[nodiscard]] const Raster<std::uint16_t>& root_codes() const { return codes_; }

 private:
  Raster<std::uint16_t> codes_;
};

}  // namespace fogline
