#pragma once

#include <cstddef>
#include <cstdint>
#include <optional>

namespace fogline {

/// The little that fogline asks of a JPEG's EXIF block.
struct ExifFacts {
  /// An exposure time or an aperture is recorded: a camera made the picture.
  bool exposure_recorded = false;
  /// Resolution in pixels per millimetre, where stated with a unit.
  std::optional<double> x_per_mm;
  std::optional<double> y_per_mm;
};

/// Reads an EXIF block (a TIFF header and its directories, after "Exif\0\0"). Bounds-checked:
/// anything that points outside the block is ignored; no throw.
ExifFacts read_exif(const std::uint8_t* bytes, std::size_t count);

}  // namespace fogline
