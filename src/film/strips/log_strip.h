#pragma once

#include "film/straight_strip.h"

#include <opencv2/core.hpp>

namespace fogline {

/// Logarithm of visual light of a straight strip: -log10(light / reference). NaN outside the scan.
cv::Mat1f log_light_of(const StraightStrip& strip, double reference_light);

}  // namespace fogline
