// Drawn film as a scan's working grid.
#pragma once

#include "base/seeded_noise.h"
#include "film/drawn_film.h"

#include <fogline/base/scan_source.h>

namespace fogline::drawn {

/// Light of every stored pixel, bare light times transmittance, grain on film and holder alike.
/// Not held at 1: the caller decides what clips.
inline Raster<float> light_of(const Scan& scan) {
  constexpr int samples = 2;
  SeededNoise noise(scan.seed);
  Raster<float> light(scan.width_px, scan.height_px);
  std::vector<PointMm> headings;
  for (const Strip& strip : scan.strips) {
    headings.push_back(heading(strip));
  }
  for (int y = 0; y < scan.height_px; ++y) {
    for (int x = 0; x < scan.width_px; ++x) {
      double sum = 0.0;
      for (int k = 0; k < samples * samples; ++k) {
        const double density = density_at(scan, headings, x + (k % samples + 0.5) / samples,
                                          y + (k / samples + 0.5) / samples);
        sum += transmittance_from_density(density) / (samples * samples);
      }
      light.at(x, y) = static_cast<float>(
          sum * scan.bare_light * transmittance_from_density(noise.normal(scan.grain_density)));
    }
  }
  return light;
}

/// A working grid of one stored pixel a grid pixel; light of 1 and more is clipped. All channels
/// hold the same light.
inline ScanGrid grid_of(const Raster<float>& light, int channels = 1) {
  constexpr std::uint8_t clip_bits = 0x11;
  ScanGrid grid;
  grid.light = LightRaster(light.width(), light.height(), channels);
  grid.clipped = Raster<std::uint8_t>(light.width(), light.height());
  for (int y = 0; y < light.height(); ++y) {
    for (int x = 0; x < light.width(); ++x) {
      for (int c = 0; c < channels; ++c) {
        grid.light.set_light(x, y, c, light.at(x, y));
        if (light.at(x, y) >= 1.0F) {
          grid.clipped.at(x, y) = static_cast<std::uint8_t>(grid.clipped.at(x, y) | clip_bits << c);
        }
      }
    }
  }
  return grid;
}

inline ScanGrid grid_of(const Scan& scan) {
  return grid_of(light_of(scan), scan.channels);
}

}  // namespace fogline::drawn
