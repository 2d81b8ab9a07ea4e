// A picture made to please: what a camera or an editor does to the sensor's light before it is
// stored. The steps follow each other as they stand here; nothing of them is told by the file.
#pragma once

#include "simulator/film_stock.h"
#include "simulator/plane.h"

#include <vector>

namespace filmsim {

struct FinishedPicture {
  Rgb balance = {1.0, 1.0, 1.0};  ///< gains of the channels
  double saturation = 1.0;        ///< channels pulled from their mean; what falls below 0 is cut
  // Tone curve, of levels by the sRGB curve.
  double black_level = 0.0;  ///< becomes black
  double white_level = 1.0;  ///< becomes white
  double s_curve = 0.0;      ///< share of a full S in place of the straight line, 0 to 0.8
  double roll_off = 0.0;     ///< highlights pressed together, 0 to 2
  double toe_lift = 0.0;     ///< level that black is lifted to, 0 to 0.1
  // Sharpness.
  double local_contrast = 0.0;  ///< unsharp masking over millimetres, 0 to 0.4
  double local_radius_mm = 2.0;
  double noise_reduction = 0.0;  ///< share of faint detail that is smoothed away, 0 to 1
  double sharpening = 0.0;       ///< unsharp masking over pixels, halos at edges, 0 to 1.5
  double sharpening_radius_px = 1.0;
};

/// The tone curve alone: level of the sensor's light to level of the picture, 0 to 1. Rises.
double finished_level(double level, const FinishedPicture& picture);

/// Replaces the signal by the light that the finished picture pretends (by the sRGB curve).
void finish(std::vector<Plane>& signal, const FinishedPicture& picture, double pixels_per_mm);

}  // namespace filmsim
