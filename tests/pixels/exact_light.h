#pragma once

// The light of single pixels as the readers sum it, before a grid rounds it.

#include "pixels/light_sums.h"
#include "pixels/open_picture.h"

#include <fogline/base/raster.h>
#include <fogline/pixels/open_scan.h>

#include <algorithm>
#include <string>

namespace fogline::test {

/// Linear light of a region of a file, averaged over `reduction` x `reduction` stored pixels.
inline Raster<float> exact_light(const std::string& path, const OpenOptions& options,
                                 const RegionPx& region, int reduction = 1) {
  OpenedPicture picture = open_picture(path);
  LightReading reading{picture.curve, {}};
  reading.curve.transfer = options.transfer.value_or(picture.curve.transfer);
  if (picture.sample_type != SampleType::f32) {
    reading.tables = light_tables(
        reading.curve, picture.sample_type == SampleType::u8 ? 256 : 65536, picture.info.channels);
  }
  const Decoding decoding{{reading}, picture.top_code, picture.info.channels};
  Raster<float> light((region.width - 1) / reduction + 1, (region.height - 1) / reduction + 1,
                      picture.info.channels);
  const auto take = [&](const LightRow& row) {
    const std::uint64_t* sum = row.light.front();
    for (int x = 0; x < light.width(); ++x) {
      const int columns = std::min(reduction, region.width - x * reduction);
      const double scale = 1.0 / (full_light * columns * row.stored_rows);
      for (int c = 0; c < light.channels(); ++c) {
        light.at(x, row.grid_y, c) = static_cast<float>(static_cast<double>(*sum++) * scale);
      }
    }
  };
  reduce_region(*picture.blocks, region, reduction, decoding, take, {});
  return light;
}

}  // namespace fogline::test
