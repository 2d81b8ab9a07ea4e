#pragma once

#include <opencv2/core.hpp>

namespace fogline {

/// How strongly a filter answers to what is no mark, as a function of place.
///
/// In squares of `block_px` the given percentile of |response| is taken, as a normal law's
/// standard deviation. A high percentile (0.96) knows grain in even film and rises where picture
/// edges fill even a twentieth of the square, but isn't moved by one mark that covers less. The
/// median (0.5) stands a mark that covers half of the square. Squares with little usable film take
/// their neighbours' greatest value. Every second pixel each way is looked at.
cv::Mat1f local_scale(const cv::Mat1f& response, const cv::Mat1b& usable, int block_px,
                      double share);

}  // namespace fogline
