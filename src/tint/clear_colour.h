#pragma once

#include "density/density_strip.h"

#include <optional>
#include <vector>

namespace fogline {

/// Colour of clear film over its patches.
struct ClearColour {
  PerChannel<double> density{};
  /// Standard uncertainty of a difference between two channels, by the patches' scatter.
  double channel_scatter = 0.0;
  double area_mm2 = 0.0;
};

/// Median over the patches, the differences between channels taken patch by patch: what moves a
/// patch as a whole (lamp, silver, dirt) doesn't reach them. Nothing where no patch is in sight or
/// the strip is grey.
std::optional<ClearColour> read_clear_colour(const DensityStrip& density,
                                             const std::vector<FilmExtent>& patches);

/// Unevenness of the colour of clear film.
struct ClearTexture {
  /// Variance of (blue - red) density between spots of about 2 mm, and noise's share of it.
  double variance = 0.0;
  double noise_variance = 0.0;
  int spots = 0;
};

ClearTexture read_clear_texture(const DensityStrip& density,
                                const std::vector<FilmExtent>& patches);

}  // namespace fogline
