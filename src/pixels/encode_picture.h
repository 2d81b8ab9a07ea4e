#pragma once

#include <fogline/base/raster.h>

#include <cstdint>
#include <vector>

namespace fogline {

/// A PNG file in memory from 8-bit samples, 1 channel (grey) or 3 (RGB), without loss. Throws
/// std::invalid_argument for an empty picture or another number of channels, std::runtime_error
/// where libpng fails.
std::vector<std::uint8_t> encode_png(const Raster<std::uint8_t>& picture);

/// A baseline JPEG file in memory from 8-bit samples, 1 channel (grey) or 3 (RGB). `quality` from 1
/// to 100 as libjpeg counts; values outside are held at the ends. Sides up to 65,500 px. Throws as
/// encode_png does.
std::vector<std::uint8_t> encode_jpeg(const Raster<std::uint8_t>& picture, int quality);

}  // namespace fogline
