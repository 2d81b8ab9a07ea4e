#pragma once

#include "pixels/exif.h"
#include "pixels/row_source.h"

#include <cstdint>
#include <memory>
#include <optional>
#include <string>
#include <vector>

namespace fogline {

/// What a JPEG says of itself before its pixels.
struct JpegHeader {
  std::uint64_t file_bytes = 0;
  std::uint32_t width = 0;
  std::uint32_t height = 0;
  /// Components as stored: 1 grey, 3 colour, 4 inks.
  int components = 0;
  ExifFacts exif;
  /// From the JFIF marker, where it states a unit.
  std::optional<double> x_per_mm;
  std::optional<double> y_per_mm;
  std::vector<std::uint8_t> profile;
};

/// Throws FileError where the header makes no sense.
JpegHeader read_jpeg_header(const std::string& path);

/// Rows of a JPEG of 1 or 3 components, grey or RGB, 8 bits. Throws FileError.
std::unique_ptr<RowReader> open_jpeg_rows(const std::string& path);

}  // namespace fogline
