#pragma once

#include "density/density_strip.h"

#include <optional>
#include <vector>

namespace fogline {

/// Slopes of the channels' densities against red over pictures.
struct PictureSlope {
  /// 1 for neutral silver; red is 1 by definition.
  PerChannel<double> slope{1.0, 1.0, 1.0};
  /// Standard uncertainty of green and blue, the greater.
  double doubt = 0.0;
  /// Red density that they were read over.
  double low = 0.0;
  double high = 0.0;
};

/// Regresses channel against red over spots of 1 mm. Where the noise of two channels is alike, the
/// difference of their densities is independent of their mean, so the regression of the one on the
/// other isn't flattened by noise (orthogonal regression at slope 1; Fuller 1987, Measurement Error
/// Models, 1.3). Each picture has its own intercept: a lamp or a veil that differs from picture to
/// picture is no slope. The dense end is left out, where stray light rules. A tone curve that is
/// off bends both channels alike and leaves the slope of neutral silver at 1.
///
/// Nothing where no picture spans enough density.
std::optional<PictureSlope> read_picture_slope(const DensityStrip& density,
                                               const std::vector<FilmExtent>& pictures,
                                               double clear_red);

}  // namespace fogline
