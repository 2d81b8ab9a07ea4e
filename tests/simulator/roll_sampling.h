// Random films and rolls: stock, development, weather and the photographer's errors.
#pragma once

#include "simulator/random.h"
#include "simulator/scenario.h"

namespace filmsim {

/// What the frames of one roll share.
struct Roll {
  FilmStock stock;
  double log_range_mean = 2.2;        ///< of its scenes
  double exposure_error_stops = 0.0;  ///< of its meter and its speed setting
  double gate_length_mm = 36.0;
  double gate_width_mm = 24.0;
  double gate_offset_mm = 0.0;  ///< of the gate's middle from the film's, across
  double gap_mean_mm = 2.0;
  double gap_sd_mm = 0.3;
  bool upside_down = false;
};

// Jones & Condit (1941): log10 of brightest over darkest spot, mean 2.2, sd 0.28. Frames of one
// roll share the weather, so most of the variance is the roll's.
inline constexpr double kLogRangeMean = 2.2;
inline constexpr double kLogRangeRollSd = 0.22;
inline constexpr double kLogRangeFrameSd = 0.1732;

FilmStock sample_stock(FilmFormat format, Random& random);
Roll sample_roll(FilmFormat format, Random& random);
/// Adds one kind of tint, picked and sized at random.
void add_random_tint(FilmStock& stock, Random& random);
/// Scene and exposure of one frame; geometry is the layout's affair.
FramePlan sample_frame(const Roll& roll, Random& random);

}  // namespace filmsim
