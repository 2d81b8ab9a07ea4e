#pragma once

#include "film/film_layout.h"
#include "film/strips/finding_image.h"

#include <vector>

#include <opencv2/core.hpp>

namespace fogline {

/// A rectangular piece of film or window of a holder, with no perforations in sight.
struct FilmWindow {
  /// Middle, long side, short side and direction of the long side, finding-image pixels, degrees.
  double x = 0.0;
  double y = 0.0;
  double length_px = 0.0;
  double width_px = 0.0;
  double direction_deg = 0.0;
  Surround surround = Surround::opaque;
};

/// Finds rectangles that could be film: windows in an opaque holder, or darker pieces on bare
/// light; or the whole image where film fills it. Sorted top to bottom, or left to right where they
/// stand upright.
std::vector<FilmWindow> film_windows(const FindingImage& image);

}  // namespace fogline
