#pragma once

#include "marks/mark_tile.h"

#include <vector>

namespace fogline {

/// A place that stands out at about the size of `diameter_mm`.
struct SpotPeak {
  cv::Point2d at;  ///< tile pixels
  double diameter_mm = 0.0;
  /// Of the middle less its surround: positive is denser.
  double response = 0.0;
  /// Response over what the same filter answers round about.
  double sigmas = 0.0;
  /// Other peaks of about its size and at least half its strength within some millimetres: a
  /// picture's leaves and windows come in crowds.
  int crowd = 0;
};

/// Spots of every size from three pixels to `largest_mm` that stand out of grain and picture:
/// differences of Gaussians on a pyramid (Lowe 2004 uses the same; here each response is measured
/// against its own neighbourhood's, so that busy picture raises the threshold). Strongest first.
std::vector<SpotPeak> spot_peaks(const MarkTile& tile, double smallest_mm, double largest_mm);

}  // namespace fogline
