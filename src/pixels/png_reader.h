#pragma once

#include "pixels/row_source.h"

#include <cstdint>
#include <memory>
#include <optional>
#include <string>
#include <vector>

namespace fogline {

/// What a PNG says of itself before its pixels.
struct PngHeader {
  std::uint64_t file_bytes = 0;
  std::uint32_t width = 0;
  std::uint32_t height = 0;
  int bits = 0;
  int samples = 0;
  bool palette = false;
  bool interlaced = false;
  bool animated = false;
  bool says_srgb = false;
  std::optional<double> gamma;
  std::optional<double> x_per_m;
  std::optional<double> y_per_m;
  std::vector<std::uint8_t> profile;

  [[nodiscard]] std::uint64_t row_bytes() const {
    return static_cast<std::uint64_t>(width) * static_cast<std::uint64_t>(samples) *
           static_cast<std::uint64_t>(bits / 8);
  }
};

/// An interlaced PNG is held whole while it is read: this much at most.
inline constexpr std::uint64_t largest_interlaced_bytes = 48 << 20;

/// Throws FileError where libpng can't make sense of the header.
PngHeader read_png_header(const std::string& path);

/// Rows of a PNG that passed the checks, 16-bit samples in host order. Throws FileError.
std::unique_ptr<RowReader> open_png_rows(const std::string& path);

}  // namespace fogline
