// Strips whose colour is known, for reading it.
#pragma once

#include "base/seeded_noise.h"
#include "density/density_strip.h"

#include <functional>
#include <vector>

namespace fogline::colour {

/// A strip of 60 x 20 mm, its density by place; pixel noise of `noise` in each channel alone, grain
/// of `grain` in all alike.
inline DensityStrip strip_of(
    const std::function<PerChannel<double>(double along, double across)>& density,
    double noise = 0.004, double grain = 0.03, int channels = most_channels) {
  constexpr double length_mm = 60.0;
  constexpr double width_mm = 20.0;
  DensityStrip strip;
  strip.extent = {0.0, length_mm, 0.0, width_mm};
  strip.pixels_per_mm = 10.0;
  const int width = static_cast<int>(length_mm * strip.pixels_per_mm);
  const int height = static_cast<int>(width_mm * strip.pixels_per_mm);
  strip.visual = Raster<float>(width, height);
  strip.channels = Raster<float>(width, height, channels);
  SeededNoise random(3);
  for (int y = 0; y < height; ++y) {
    for (int x = 0; x < width; ++x) {
      const PerChannel<double> at = density(strip.along_mm(x), strip.across_mm(y));
      const double silver = random.normal(grain);
      for (int c = 0; c < channels; ++c) {
        strip.channels.at(x, y, c) =
            static_cast<float>(at[static_cast<std::size_t>(c)] + silver + random.normal(noise));
      }
    }
  }
  return strip;
}

inline PerChannel<double> grey(double density) {
  return {density, density, density};
}

/// Twenty patches of 2 x 2 mm.
inline std::vector<FilmExtent> patches() {
  std::vector<FilmExtent> areas;
  for (int i = 0; i < 20; ++i) {
    const double along = 2.0 + 2.8 * i;
    const double across = i % 2 == 0 ? 2.0 : 16.0;
    areas.push_back({along, along + 2.0, across, across + 2.0});
  }
  return areas;
}

inline const std::vector<FilmExtent> two_pictures{{1.0, 29.0, 1.0, 19.0}, {31.0, 59.0, 1.0, 19.0}};

}  // namespace fogline::colour
