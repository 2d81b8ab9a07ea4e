#pragma once

#include <fogline/base/scan_source.h>

#include <opencv2/core.hpp>

namespace fogline {

/// A small picture of the scan on the logarithm of light, on which film is found.
///
/// `log_light` is -log10 of light over the brightest light of the scan: a density but for
/// an unknown constant (the lamp) and an unknown tone curve. Pixel (i, j) of it averages
/// `scan_px` x `scan_px` stored pixels in linear light.
struct FindingImage {
  cv::Mat1f log_light;
  double scan_px = 1.0;
};

/// What light the film is looked for in. Under a coloured lamp a camera's strongest channel may
/// have reached its top in film and holes alike, and only another tells them apart. `turned_over`:
/// visual light with brightest and darkest changed, for asking whether a scan was inverted.
enum class FindingLight { visual, red, green, blue, turned_over };

/// Builds the finding image with at most `most_pixels` pixels. A grey scan is the same in every
/// colour.
FindingImage finding_image(const ScanGrid& grid, std::int64_t most_pixels, FindingLight seen);

}  // namespace fogline
