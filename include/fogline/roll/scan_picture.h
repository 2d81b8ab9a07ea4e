#pragma once

#include <fogline/base/raster.h>

#include <cstdint>

namespace fogline {

/// A small display picture of the scan (sRGB, 8 bits, 1 or 3 channels).
struct ScanPicture {
  Raster<std::uint8_t> pixels;
  /// Stored pixels of the scan a picture pixel.
  double scan_px_per_pixel = 1.0;
};

}  // namespace fogline
