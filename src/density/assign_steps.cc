#include <fogline/density/assign_steps.h>

#include <algorithm>
#include <cmath>
#include <limits>

namespace fogline {

namespace {

/// So many of the lightest unclipped steps tell the slope of the scanner's scale there.
constexpr std::size_t slope_steps = 5;
/// The best place in the reference must fit so much better than any other: its misfit at most this
/// part of the next one's.
constexpr double clear_part = 0.5;

/// How far the straight line through the lightest steps misses the bare light, as a density, where
/// the wedge begins at reference step `first`; infinite where no line can be drawn.
double misfit(const std::vector<SeenStep>& seen, const WedgeReference& reference, int first) {
  double sum_x = 0.0;
  double sum_y = 0.0;
  double sum_xx = 0.0;
  double sum_xy = 0.0;
  double count = 0.0;
  for (const SeenStep& step : seen) {
    if (step.clipped) {
      continue;
    }
    const double x = reference.steps[static_cast<std::size_t>(first + step.slot)].density;
    sum_x += x;
    sum_y += step.density;
    sum_xx += x * x;
    sum_xy += x * step.density;
    count += 1.0;
    if (count >= static_cast<double>(slope_steps)) {
      break;
    }
  }
  const double spread = count * sum_xx - sum_x * sum_x;
  const double slope = (count * sum_xy - sum_x * sum_y) / spread;
  if (!(spread > 0.0) || !(slope > 0.0)) {
    return std::numeric_limits<double>::infinity();
  }
  return std::abs((sum_y - slope * sum_x) / count) / slope;
}

std::string count_text(std::size_t seen, std::size_t known) {
  return "shows " + std::to_string(seen) + " steps where the reference has " +
         std::to_string(known);
}

}  // namespace

StepAssignment assign_steps(const std::vector<SeenStep>& seen, const WedgeReference& reference,
                            bool above_bare_light) {
  StepAssignment assignment;
  const int length = seen.back().slot + 1;
  const int known = static_cast<int>(reference.steps.size());
  if (length > known) {
    assignment.failure = count_text(static_cast<std::size_t>(length), reference.steps.size()) +
                         ": it is another wedge's, or steps are missing in it";
    return assignment;
  }
  int first = 0;
  if (length < known) {
    const std::string missing =
        count_text(static_cast<std::size_t>(length), reference.steps.size());
    if (!above_bare_light) {
      assignment.failure =
          missing +
          ", and no unclipped bare light beside the wedge tells which are missing; "
          "scan the whole wedge with some bare light below the top code";
      return assignment;
    }
    std::vector<double> misfits;
    for (int i = 0; i <= known - length; ++i) {
      misfits.push_back(misfit(seen, reference, i));
    }
    const auto best = std::min_element(misfits.begin(), misfits.end());
    first = static_cast<int>(best - misfits.begin());
    for (std::size_t i = 0; i < misfits.size(); ++i) {
      if (static_cast<int>(i) != first && !(*best < clear_part * misfits[i])) {
        assignment.failure = missing +
                             ", and which are missing can't be told from the bare light; scan the "
                             "whole wedge, or name a reference of the steps in sight";
        return assignment;
      }
    }
  }
  for (const SeenStep& step : seen) {
    assignment.reference_index.push_back(first + step.slot);
  }
  return assignment;
}

}  // namespace fogline
