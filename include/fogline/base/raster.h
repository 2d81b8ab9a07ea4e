#pragma once

#include <cstddef>
#include <vector>

namespace fogline {

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

}  // namespace fogline
