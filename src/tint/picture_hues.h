#pragma once

#include "density/density_strip.h"

#include <optional>
#include <vector>

namespace fogline {

/// How far the colours of pictures stray from one line of greys, density.
struct PictureHues {
  /// Scaled median absolute deviation of a channel's density against another's, at equal density
  /// and with what changes evenly over the picture taken out; the median picture's.
  double scatter_density = 0.0;
  /// How much of it is noise: the same of neighbours' differences.
  double noise_density = 0.0;
  /// Pictures that were read.
  int pictures = 0;
};

/// Silver, however stained, has one colour at each density: channels follow each other over the
/// whole picture. Dyes of colour film don't (each layer has a picture of its own). Reads spots of
/// 1 mm; lamp, veil and image-wise stain are taken out by a smooth course over place and density.
///
/// Nothing where no picture has enough spots, or on grey scans.
std::optional<PictureHues> read_picture_hues(const DensityStrip& density,
                                             const std::vector<FilmExtent>& pictures,
                                             double clear_density);

/// Whether pictures hold colours that silver can't: more than noise, and more than a patchy veil
/// makes in clear film.
bool shows_colour_film(const DensityStrip& density, const std::vector<FilmExtent>& clear,
                       const std::vector<FilmExtent>& pictures, double least_hues_density);

}  // namespace fogline
