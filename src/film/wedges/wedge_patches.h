#pragma once

#include "film/strips/finding_image.h"

#include <fogline/base/raster.h>

#include <vector>

#include <opencv2/core.hpp>

namespace fogline {

/// An even, nearly rectangular area of a finding image, in its pixels.
struct EvenPatch {
  PointPx middle;
  double width = 0.0;
  double height = 0.0;
  /// Median log light (rising with density).
  double level = 0.0;
};

/// The finding image with grain and dust smoothed out.
cv::Mat1f smoothed(const FindingImage& image);

/// Greatest difference of log light between neighbours of each pixel.
cv::Mat1f unevenness(const cv::Mat1f& smooth);

/// Even patches of some pixels up to a quarter of the picture, each once: looked for at several
/// thresholds, since noise grows with density while steps of light film differ little.
std::vector<EvenPatch> even_patches(const cv::Mat1f& smooth, const cv::Mat1f& uneven);

}  // namespace fogline
