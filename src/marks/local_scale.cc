#include "marks/local_scale.h"

#include <algorithm>
#include <cmath>
#include <vector>

#include <opencv2/imgproc.hpp>

namespace fogline {

namespace {

/// Values of |standard normal| at the percentiles in use (tables of the normal law).
constexpr double normal_at_median = 0.6745;
constexpr double normal_at_high = 2.0537;
/// No scan is quieter than this: steps of stored codes.
constexpr float least_scale = 0.0008F;
/// Fewer values than this tell no percentile.
constexpr std::size_t enough_values = 24;

}  // namespace

cv::Mat1f local_scale(const cv::Mat1f& response, const cv::Mat1b& usable, int block_px,
                      double share) {
  const int columns = std::max(1, (response.cols + block_px / 2) / block_px);
  const int rows = std::max(1, (response.rows + block_px / 2) / block_px);
  cv::Mat1f scale(rows, columns, 0.0F);
  const double normal = share > 0.75 ? normal_at_high : normal_at_median;
  std::vector<float> values;
  for (int j = 0; j < rows; ++j) {
    for (int i = 0; i < columns; ++i) {
      values.clear();
      for (int y = j * response.rows / rows; y < (j + 1) * response.rows / rows; y += 2) {
        for (int x = i * response.cols / columns; x < (i + 1) * response.cols / columns; x += 2) {
          if (usable(y, x) != 0) {
            values.push_back(std::abs(response(y, x)));
          }
        }
      }
      if (values.size() >= enough_values) {
        const auto rank = static_cast<std::ptrdiff_t>(share * static_cast<double>(values.size()));
        std::nth_element(values.begin(), values.begin() + rank, values.end());
        scale(j, i) = std::max(least_scale,
                               values[static_cast<std::size_t>(rank)] / static_cast<float>(normal));
      }
    }
  }
  cv::Mat1f near;
  cv::dilate(scale, near, cv::Mat());
  near.copyTo(scale, scale == 0.0F);
  // Far from any usable film nothing may answer.
  constexpr float never = 1e3F;
  scale.setTo(never, scale == 0.0F);
  cv::Mat1f full;
  cv::resize(scale, full, response.size(), 0, 0, cv::INTER_LINEAR);
  return full;
}

}  // namespace fogline
