#pragma once

#include "marks/mark_tile.h"
#include "marks/spot_peaks.h"

#include <optional>

namespace fogline {

/// What a spot looks like, outlined where half of its light contrast is reached.
struct SpotShape {
  cv::Point2d middle;  ///< tile pixels
  cv::Rect box;        ///< tile pixels
  double area_mm2 = 0.0;
  /// Diameter of the disc of that area, and greatest extent.
  double diameter_mm = 0.0;
  double size_mm = 0.0;
  /// Core less surround; positive is denser.
  double contrast = 0.0;
  double surround_density = 0.0;
  double core_density = 0.0;
  /// Contrast over the spread of the surround (10th to 90th percentile, as a standard deviation):
  /// whether the spot lies alone on something even.
  double stands_out = 0.0;
  double circularity = 0.0;  ///< 1 for a disc, by second moments
  double solidity = 0.0;     ///< area over that of its convex hull
  /// Of 24 directions from the middle, the share in which density passes from core to surround
  /// once, within a quarter of the radius of the mean edge.
  double even_edge = 0.0;
  /// Spread of density inside the inner two thirds, over the contrast: small for a flat disc.
  double unevenness = 0.0;
  /// From 20 to 80 % of contrast, along those directions, median.
  double edge_mm = 0.0;
  /// Greatest less smallest contrast over the channels, over the visual one; 0 on grey scans.
  double colour_spread = 0.0;
  /// Share of the surround that is usable film.
  double surround_usable = 0.0;
  /// Of the peak it was found by.
  double sigmas = 0.0;
  int crowd = 0;
  /// How far it lies beyond what the film within some millimetres shows (see beyond_range).
  double beyond = 0.0;
};

/// Outlines the spot at a peak; nothing where it has no closed outline of about that size.
std::optional<SpotShape> spot_shape(const MarkTile& tile, const SpotPeak& peak);

}  // namespace fogline
