#pragma once

#include <fogline/base/scan_source.h>

#include <opencv2/core.hpp>

namespace fogline {

/// A small picture of the scan on the logarithm of light, on which film is found.
///
/// `log_light` is -log10 of visual light over the brightest light of the scan: a density but for
/// an unknown constant (the lamp) and an unknown tone curve. Pixel (i, j) of it averages
/// `scan_px` x `scan_px` stored pixels in linear light.
struct FindingImage {
  cv::Mat1f log_light;
  double scan_px = 1.0;
};

/// Builds the finding image with at most `most_pixels` pixels. `turned_over` gives the negative of
/// it (brightest and darkest change places), for asking whether a scan was inverted.
FindingImage finding_image(const ScanGrid& grid, std::int64_t most_pixels, bool turned_over);

}  // namespace fogline
