// Small images for tests of filters.
#pragma once

#include "base/seeded_noise.h"

#include <cstdint>

#include <opencv2/core.hpp>

namespace fogline {

inline cv::Mat1f noise_image(int columns, int rows, double sd, std::uint32_t seed) {
  SeededNoise random(seed);
  cv::Mat1f image(rows, columns);
  for (float& value : image) {
    value = static_cast<float>(random.normal(sd));
  }
  return image;
}

/// The mask that holds all of an image.
inline cv::Mat1b all_of(const cv::Mat1f& image) {
  return {image.size(), static_cast<unsigned char>(255)};
}

/// Greatest difference between two images of one size.
inline double most_apart(const cv::Mat1f& one, const cv::Mat1f& other) {
  return cv::norm(one, other, cv::NORM_INF);
}

}  // namespace fogline
