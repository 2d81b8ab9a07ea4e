#pragma once

#include "film/strips/finding_image.h"

#include <vector>

namespace fogline {

/// A bright, compact, roughly rectangular spot that could be a perforation. Finding-image pixels.
struct BrightSpot {
  double x = 0.0;
  double y = 0.0;
  double width = 0.0;
  double height = 0.0;
  /// Log light inside.
  double level = 0.0;
  /// Cut by the image border: its size means nothing.
  bool at_border = false;
};

/// Spots brighter than their surroundings, by connected areas at a ladder of levels (the lamp may
/// fall off over the picture, and clear film lies 0.05 to 0.6 above it, so that no one level fits).
/// A spot is kept where two levels at least agree on it. Most spots are not perforations; rows of
/// equal pitch tell.
std::vector<BrightSpot> bright_spots(const FindingImage& image);

}  // namespace fogline
