#pragma once

#include "film/frames/frame_profile.h"

#include <opencv2/core.hpp>

namespace fogline {

/// Takes stripes for gaps that read denser than clear film but can be nothing else: even over the
/// whole height between two borders that show over it, no longer than gaps are, and no denser than
/// falling light makes them. A makeshift lamp that falls off where no perforation tells it darkens
/// a whole gap. `pieces`: mean excess by piece of the height (rows) and column.
void take_even_stripes_for_gaps(FrameProfile& profile, const cv::Mat1f& pieces);

}  // namespace fogline
