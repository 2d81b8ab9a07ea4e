#include "density/density_strip.h"

#include <algorithm>
#include <cmath>
#include <limits>
#include <utility>

namespace fogline {

namespace {

/// Stray light and lamp change slowly: they are worked out on a mesh of this many strip pixels.
constexpr int mesh_px = 16;

struct MeshPoint {
  PerChannel<float> stray{};
  PerChannel<float> lamp{};
};

}  // namespace

int DensityStrip::column(double along) const {
  const double x = std::floor((along - extent.along_begin_mm) * pixels_per_mm);
  return static_cast<int>(std::clamp(x, 0.0, static_cast<double>(visual.width() - 1)));
}

int DensityStrip::row(double across) const {
  const double y = std::floor((across - extent.across_begin_mm) * pixels_per_mm);
  return static_cast<int>(std::clamp(y, 0.0, static_cast<double>(visual.height() - 1)));
}

Raster<float> visual_density_of(StraightStrip& strip, const FilmMap& map, const StrayLight& stray,
                                const Lamp& lamp) {
  const int width = strip.light.width();
  const int height = strip.light.height();
  const int channels = strip.light.channels();
  Raster<float> visual(width, height, 1, NAN);
  for (int y0 = 0; y0 < height; y0 += mesh_px) {
    for (int x0 = 0; x0 < width; x0 += mesh_px) {
      MeshPoint mesh;
      const PointMm film{strip.along_mm(x0) + 0.5 * mesh_px / strip.pixels_per_mm,
                         strip.across_mm(y0) + 0.5 * mesh_px / strip.pixels_per_mm};
      const PointPx scan = map.scan_from_film(film);
      for (int c = 0; c < channels; ++c) {
        const auto i = static_cast<std::size_t>(c);
        mesh.stray[i] = stray.at(scan.x, scan.y, c);
        mesh.lamp[i] = static_cast<float>(lamp.light(film, c));
      }
      for (int y = y0; y < std::min(y0 + mesh_px, height); ++y) {
        for (int x = x0; x < std::min(x0 + mesh_px, width); ++x) {
          PerChannel<float> transmittance{};
          bool lit = true;
          for (int c = 0; c < channels; ++c) {
            const auto i = static_cast<std::size_t>(c);
            transmittance[i] = (strip.light.at(x, y, c) - mesh.stray[i]) / mesh.lamp[i];
            strip.light.at(x, y, c) = transmittance[i];
            lit = lit && transmittance[i] > 0.0F;
          }
          if (lit) {
            visual.at(x, y) = -std::log10(visual_from_channels(transmittance, channels));
          } else if (!std::isnan(transmittance[0])) {
            visual.at(x, y) = std::numeric_limits<float>::infinity();
          }
        }
      }
    }
  }
  return visual;
}

DensityStrip density_of(const StraightStrip& strip, const FilmMap& map, const StrayLight& stray,
                        const Lamp& lamp) {
  StraightStrip light = strip;
  DensityStrip result;
  result.extent = strip.extent;
  result.pixels_per_mm = strip.pixels_per_mm;
  result.visual = visual_density_of(light, map, stray, lamp);
  result.channels = std::move(light.light);
  for (float& value : result.channels.samples()) {
    if (!std::isnan(value)) {
      value = value > 0.0F ? -std::log10(value) : std::numeric_limits<float>::infinity();
    }
  }
  return result;
}

void subtract_stray(std::vector<LightSample>& samples, const FilmMap& map, const StrayLight& stray,
                    int channels) {
  for (LightSample& sample : samples) {
    const PointPx scan = map.scan_from_film(sample.film);
    for (int c = 0; c < channels; ++c) {
      double& light = sample.light[static_cast<std::size_t>(c)];
      light = std::max(1e-6, light - static_cast<double>(stray.at(scan.x, scan.y, c)));
    }
  }
}

}  // namespace fogline
