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

}  // namespace

cv::Point2d RingPath::point(int direction) const {
  const double angle = angle_of(direction);
  const double r = radius[static_cast<std::size_t>(direction)];
  return {middle.x + r * std::cos(angle), middle.y + r * std::sin(angle)};
}

std::optional<RingPath> best_ring(const LineEvidence& evidence, cv::Point2d middle, double least_px,
                                  double most_px) {
  const int radii = static_cast<int>(most_px - least_px) + 1;
  if (radii < 3) {
    return std::nullopt;
  }
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
  // Two rounds: the second starts where the first was led, so its ends meet.
  constexpr std::size_t steps = 2 * ring_directions;
  std::vector<float> sum(size, 0.0F);
  std::vector<float> next(size);
  std::vector<signed char> from(size * steps);
  for (std::size_t step = 0; step < steps; ++step) {
    const float* here = &polar[step % ring_directions * size];
    for (int r = 0; r < radii; ++r) {
      int best = 0;
      for (const int move : {-1, 1}) {
        if (r + move >= 0 && r + move < radii &&
            sum[static_cast<std::size_t>(r + move)] > sum[static_cast<std::size_t>(r + best)]) {
          best = move;
        }
      }
      const auto at = static_cast<std::size_t>(r);
      next[at] = sum[static_cast<std::size_t>(r + best)] + here[r];
      from[step * size + at] = static_cast<signed char>(best);
    }
    sum.swap(next);
  }
  RingPath path;
  path.middle = middle;
  int r = static_cast<int>(std::max_element(sum.begin(), sum.end()) - sum.begin());
  const int end = r;
  for (std::size_t step = steps; step-- > ring_directions;) {
    const std::size_t direction = step % ring_directions;
    path.radius[direction] = least_px + r;
    path.sum += static_cast<double>(polar[direction * size + static_cast<std::size_t>(r)]);
    r += from[step * size + static_cast<std::size_t>(r)];
  }
  constexpr int open = 2;
  if (std::abs(r - end) > open) {
    return std::nullopt;
  }
  return path;
}

}  // namespace fogline
