#pragma once

#include <array>
#include <optional>

#include <opencv2/core.hpp>

namespace fogline {

inline constexpr int ring_directions = 64;

/// A closed outline about a middle: one radius a direction, pixels.
struct RingPath {
  cv::Point2d middle;
  std::array<double, ring_directions> radius{};
  /// Sum of the evidence along it.
  double sum = 0.0;

  [[nodiscard]] cv::Point2d point(int direction) const;
};

/// How much each pixel speaks for a line through it, and the line's direction: `strength`, and
/// `strength` times cosine and sine of twice the angle across the line.
struct LineEvidence {
  cv::Mat1f strength;
  cv::Mat1f cosine;
  cv::Mat1f sine;

  /// Evidence for a line whose across direction has that double angle: strength times the squared
  /// cosine of the angle between.
  [[nodiscard]] float toward(int x, int y, float double_cosine, float double_sine) const {
    return 0.5F * (strength(y, x) + cosine(y, x) * double_cosine + sine(y, x) * double_sine);
  }
};

/// The closed outline about `middle` that gathers most evidence, from `least_px` to `most_px` in
/// radius: dynamic programming over directions, the radius changing by at most one step from one
/// to the next, gone round twice so that it closes. A line counts as far as it runs round the
/// middle. Nothing where the best outline doesn't close or gathers less than `least_sum`.
std::optional<RingPath> best_ring(const LineEvidence& evidence, cv::Point2d middle, double least_px,
                                  double most_px, double least_sum);

}  // namespace fogline
