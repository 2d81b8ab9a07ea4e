#include "marks/ring_path.h"

#include <algorithm>
#include <cmath>
#include <numbers>
#include <vector>

namespace fogline {

namespace {

double angle_of(int direction) {
  return 2.0 * std::numbers::pi * direction / ring_directions;
}

/// Evidence about a middle, direction by direction, radius by radius from `least_px`.
std::vector<float> evidence_by_direction(const LineEvidence& evidence, cv::Point2d middle,
                                         double least_px, int radii) {
  const auto size = static_cast<std::size_t>(radii);
  std::vector<float> polar(size * ring_directions);
  for (int d = 0; d < ring_directions; ++d) {
    const double c = std::cos(angle_of(d));
    const double s = std::sin(angle_of(d));
    const auto double_cosine = static_cast<float>(std::cos(2.0 * angle_of(d)));
    const auto double_sine = static_cast<float>(std::sin(2.0 * angle_of(d)));
    for (int r = 0; r < radii; ++r) {
      const int x = static_cast<int>(std::floor(middle.x + (least_px + r) * c));
      const int y = static_cast<int>(std::floor(middle.y + (least_px + r) * s));
      const bool inside =
          x >= 0 && y >= 0 && x < evidence.strength.cols && y < evidence.strength.rows;
      polar[static_cast<std::size_t>(d) * size + static_cast<std::size_t>(r)] =
          inside ? evidence.toward(x, y, double_cosine, double_sine) : 0.0F;
    }
  }
  return polar;
}

/// The most that any path gathers in one round, whether it closes or not.
double best_open_sum(const std::vector<float>& polar, std::size_t size) {
  // Padded at both ends, so that the inner loop has no branch.
  std::vector<float> sum(size + 2, 0.0F);
  std::vector<float> next(size + 2, 0.0F);
  for (std::size_t d = 0; d < ring_directions; ++d) {
    const float* here = &polar[d * size];
    for (std::size_t r = 0; r < size; ++r) {
      next[r + 1] = std::max(sum[r + 1], std::max(sum[r], sum[r + 2])) + here[r];
    }
    sum.swap(next);
  }
  return static_cast<double>(*std::max_element(sum.begin() + 1, sum.end() - 1));
}

}  // namespace

cv::Point2d RingPath::point(int direction) const {
  const double angle = angle_of(direction);
  const double r = radius[static_cast<std::size_t>(direction)];
  return {middle.x + r * std::cos(angle), middle.y + r * std::sin(angle)};
}

std::optional<RingPath> best_ring(const LineEvidence& evidence, cv::Point2d middle, double least_px,
                                  double most_px, double least_sum) {
  const int radii = static_cast<int>(most_px - least_px) + 1;
  if (radii < 3) {
    return std::nullopt;
  }
  const auto size = static_cast<std::size_t>(radii);
  const std::vector<float> polar = evidence_by_direction(evidence, middle, least_px, radii);
  if (best_open_sum(polar, size) < least_sum) {
    return std::nullopt;
  }
  // Two rounds: the second starts where the first was led, so its ends meet.
  constexpr auto steps = 2 * static_cast<std::size_t>(ring_directions);
  std::vector<float> sum(size, 0.0F);
  std::vector<float> next(size);
  std::vector<std::size_t> from(size * steps);
  for (std::size_t step = 0; step < steps; ++step) {
    const float* here = &polar[step % ring_directions * size];
    for (std::size_t r = 0; r < size; ++r) {
      std::size_t best = r;
      if (r > 0 && sum[r - 1] > sum[best]) {
        best = r - 1;
      }
      if (r + 1 < size && sum[r + 1] > sum[best]) {
        best = r + 1;
      }
      next[r] = sum[best] + here[r];
      from[step * size + r] = best;
    }
    sum.swap(next);
  }
  RingPath path;
  path.middle = middle;
  auto r = static_cast<std::size_t>(std::max_element(sum.begin(), sum.end()) - sum.begin());
  const std::size_t end = r;
  for (std::size_t step = steps; step-- > ring_directions;) {
    const std::size_t direction = step % ring_directions;
    path.radius[direction] = least_px + static_cast<double>(r);
    path.sum += static_cast<double>(polar[direction * size + r]);
    r = from[step * size + r];
  }
  constexpr std::size_t open = 2;
  if (path.sum < least_sum) {
    return std::nullopt;
  }
  if (std::max(r, end) - std::min(r, end) > open) {
    return std::nullopt;
  }
  return path;
}

}  // namespace fogline
