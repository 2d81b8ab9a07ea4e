#pragma once

#include <opencv2/core.hpp>

namespace fogline {

/// Thin lines of a picture, per pixel.
struct Ridge {
  /// How much denser (or, for `sign` -1, thinner) the middle of the line is than the nearer of its
  /// two sides: a step between two tones isn't a line. 0 off the crest.
  cv::Mat1f height;
  /// Direction across the line, radians, where height > 0.
  cv::Mat1f across;
};

/// Crests of lines about `width_px` broad. Second derivatives after a Gaussian of the line's width
/// tell place and direction (Steger 1998); the height is then read off the smoothed picture. Only
/// pixels of `where` are asked.
Ridge ridge_crests(const cv::Mat1f& density, double width_px, int sign, const cv::Mat1b& where);

/// The height that ridge_crests would give at every pixel and the best of four directions, without
/// asking for a crest: what even film and picture answer, for a threshold.
cv::Mat1f ridge_heights(const cv::Mat1f& density, double width_px, int sign);

}  // namespace fogline
