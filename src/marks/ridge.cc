#include "marks/ridge.h"

#include <algorithm>
#include <cmath>

#include <opencv2/imgproc.hpp>

namespace fogline {

namespace {

/// The smoothing that answers most to a bar of width w: w / sqrt(12), at least what one pixel
/// needs for a derivative to mean something.
double smoothing_px(double width_px) {
  constexpr double least = 0.8;
  return std::max(least, width_px / std::sqrt(12.0));
}

/// Sides are looked at this far from the crest.
double side_px(double width_px) {
  constexpr double least = 2.5;
  return std::max(least, 1.4 * width_px);
}

float value_at(const cv::Mat1f& image, double x, double y) {
  const double px = std::clamp(x, 0.0, image.cols - 1.001);
  const double py = std::clamp(y, 0.0, image.rows - 1.001);
  const int x0 = static_cast<int>(px);
  const int y0 = static_cast<int>(py);
  const auto fx = static_cast<float>(px - x0);
  const auto fy = static_cast<float>(py - y0);
  const int x1 = std::min(x0 + 1, image.cols - 1);
  const int y1 = std::min(y0 + 1, image.rows - 1);
  return (image(y0, x0) * (1.0F - fx) + image(y0, x1) * fx) * (1.0F - fy) +
         (image(y1, x0) * (1.0F - fx) + image(y1, x1) * fx) * fy;
}

}  // namespace

cv::Mat1f ridge_heights(const cv::Mat1f& density, double width_px, int sign) {
  cv::Mat1f smooth;
  cv::GaussianBlur(density, smooth, {}, smoothing_px(width_px));
  smooth *= sign;
  const int side = static_cast<int>(std::lround(side_px(width_px)));
  const int slant = static_cast<int>(std::lround(side_px(width_px) / std::sqrt(2.0)));
  cv::Mat1f best(density.size(), 0.0F);
  for (int y = side; y + side < smooth.rows; ++y) {
    const auto* row = smooth.ptr<float>(y);
    const auto* up = smooth.ptr<float>(y - side);
    const auto* down = smooth.ptr<float>(y + side);
    const auto* slant_up = smooth.ptr<float>(y - slant);
    const auto* slant_down = smooth.ptr<float>(y + slant);
    auto* out = best.ptr<float>(y);
    for (int x = side; x + side < smooth.cols; ++x) {
      const float higher =
          std::min({std::max(row[x - side], row[x + side]), std::max(up[x], down[x]),
                    std::max(slant_up[x - slant], slant_down[x + slant]),
                    std::max(slant_up[x + slant], slant_down[x - slant])});
      out[x] = std::max(0.0F, row[x] - higher);
    }
  }
  return best;
}

Ridge ridge_crests(const cv::Mat1f& density, double width_px, int sign, const cv::Mat1b& where) {
  cv::Mat1f smooth;
  cv::GaussianBlur(density, smooth, {}, smoothing_px(width_px));
  smooth *= sign;
  const double side = side_px(width_px);
  Ridge ridge{cv::Mat1f(density.size(), 0.0F), cv::Mat1f(density.size(), 0.0F)};
  for (int y = 1; y + 1 < smooth.rows; ++y) {
    const auto* above = smooth.ptr<float>(y - 1);
    const auto* row = smooth.ptr<float>(y);
    const auto* below = smooth.ptr<float>(y + 1);
    for (int x = 1; x + 1 < smooth.cols; ++x) {
      if (where(y, x) == 0) {
        continue;
      }
      const float xx = row[x - 1] - 2.0F * row[x] + row[x + 1];
      const float yy = above[x] - 2.0F * row[x] + below[x];
      if (xx >= 0.0F && yy >= 0.0F) {
        continue;
      }
      const float xy = 0.25F * (above[x - 1] - above[x + 1] - below[x - 1] + below[x + 1]);
      // Direction of the greatest downward curvature.
      const float angle = 0.5F * std::atan2(2.0F * xy, xx - yy) + static_cast<float>(CV_PI / 2.0);
      const double c = std::cos(angle);
      const double s = std::sin(angle);
      if (row[x] < value_at(smooth, x + c, y + s) || row[x] < value_at(smooth, x - c, y - s)) {
        continue;
      }
      const float higher = std::max(value_at(smooth, x + side * c, y + side * s),
                                    value_at(smooth, x - side * c, y - side * s));
      if (row[x] > higher) {
        ridge.height(y, x) = row[x] - higher;
        ridge.across(y, x) = angle;
      }
    }
  }
  return ridge;
}

}  // namespace fogline
