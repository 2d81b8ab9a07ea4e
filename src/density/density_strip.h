#pragma once

#include "density/lamp.h"
#include "density/stray_light.h"
#include "film/film_layout.h"
#include "film/straight_strip.h"

#include <fogline/base/raster.h>

namespace fogline {

/// A strip laid straight, in density. One pixel is a spot of 0.1 mm; averages are of transmittance.
/// NaN where there is no film to read: outside the scan or the holder's window. Infinite where no
/// light is left above the stray light.
struct DensityStrip {
  FilmExtent extent;
  double pixels_per_mm = 10.0;
  /// Visual density.
  Raster<float> visual;
  /// Density per channel, 1 or 3 channels.
  Raster<float> channels;

  [[nodiscard]] double along_mm(int x) const {
    return extent.along_begin_mm + (x + 0.5) / pixels_per_mm;
  }
  [[nodiscard]] double across_mm(int y) const {
    return extent.across_begin_mm + (y + 0.5) / pixels_per_mm;
  }
  [[nodiscard]] int column(double along_mm) const;
  [[nodiscard]] int row(double across_mm) const;
};

/// Density of a straight strip: D = -log10((light - stray) / (lamp - stray at the lamp)).
/// `lamp` is what bare light (or, for densities above base, clear film) reads, stray light already
/// taken away.
DensityStrip density_of(const StraightStrip& strip, const FilmMap& map, const StrayLight& stray,
                        const Lamp& lamp);

/// Turns a straight strip's light into transmittance in place, channel by channel, and returns its
/// visual density: for large areas, where density per channel is wanted in few places only.
Raster<float> visual_density_of(StraightStrip& strip, const FilmMap& map, const StrayLight& stray,
                                const Lamp& lamp);

/// Takes stray light away from samples of bare light, so that a lamp can be fitted to them.
void subtract_stray(std::vector<LightSample>& samples, const FilmMap& map, const StrayLight& stray,
                    int channels);

}  // namespace fogline
