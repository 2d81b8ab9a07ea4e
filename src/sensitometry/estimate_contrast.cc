#include "sensitometry/estimate_contrast.h"

#include "numerics/robust.h"

#include <algorithm>
#include <cmath>

namespace fogline {

namespace {

/// Usual log exposure range on the film between the 2nd and 98th percentile of a picture.
constexpr double usual_log_h_range = 1.35;
/// Standard uncertainty of that for one roll, share: weather and subjects of the roll.
constexpr double roll_share = 0.22;
/// Scatter between the frames of a roll, share: averages out over frames.
constexpr double frame_share = 0.30;
constexpr std::size_t fewest_frames = 2;

}  // namespace

ContrastEstimate estimate_contrast(const std::vector<Quantity>& ranges) {
  ContrastEstimate estimate;
  std::vector<double> values;
  std::vector<double> doubts;
  std::size_t bounds = 0;
  for (const Quantity& range : ranges) {
    values.push_back(range.value);
    doubts.push_back(range.u95);
    bounds += range.at_least ? 1 : 0;
  }
  if (ranges.size() < fewest_frames) {
    estimate.contrast_index = Unknown::few_frames_for_contrast;
    estimate.density_range = Unknown::few_frames_for_range;
    return estimate;
  }
  const double range = median(values);
  const double doubt = median(doubts);
  estimate.density_range = Quantity{range, doubt, {}, {}, {}, 2 * bounds > ranges.size()};
  if (2 * bounds > ranges.size()) {
    estimate.contrast_index = Unknown::frames_too_dense;
    return estimate;
  }
  const double scene =
      std::hypot(roll_share, frame_share / std::sqrt(static_cast<double>(ranges.size())));
  Quantity contrast;
  contrast.value = range / usual_log_h_range;
  contrast.u95 =
      contrast.value * std::hypot(coverage_factor_95 * scene, range > 0.0 ? doubt / range : 0.0);
  estimate.method = ContrastMethod::scene_estimate;
  estimate.contrast_index = contrast;
  return estimate;
}

}  // namespace fogline
