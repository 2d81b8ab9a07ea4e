#include <fogline/density/assign_steps.h>
#include <fogline/numerics/robust.h>

#include <algorithm>
#include <cmath>
#include <limits>

namespace fogline {

namespace {

/// So many of the lightest unclipped steps tell the slope of the scanner's scale there.
constexpr std::size_t slope_steps = 7;
/// The best place in the reference must fit so much better than any other: its misfit at most this
/// part of the next one's.
constexpr double clear_part = 0.5;

/// How far the straight line through the lightest steps misses the bare light, as a density, where
/// the wedge begins at reference step `first`; infinite where no line can be drawn. The line is the
/// median of those through two steps each (Theil 1950), which one dirty step doesn't move.
double misfit(const std::vector<SeenStep>& seen, const WedgeReference& reference, int first) {
  std::vector<double> known;
  std::vector<double> shown;
  for (const SeenStep& step : seen) {
    if (!step.clipped && known.size() < slope_steps) {
      known.push_back(reference.steps[static_cast<std::size_t>(first + step.slot)].density);
      shown.push_back(step.density);
    }
  }
  std::vector<double> slopes;
  for (std::size_t i = 0; i < known.size(); ++i) {
    for (std::size_t j = i + 1; j < known.size(); ++j) {
      slopes.push_back((shown[j] - shown[i]) / (known[j] - known[i]));
    }
  }
  const double slope = slopes.empty() ? 0.0 : median(slopes);
  if (!(slope > 0.0)) {
    return std::numeric_limits<double>::infinity();
  }
  std::vector<double> offsets;
  for (std::size_t i = 0; i < known.size(); ++i) {
    offsets.push_back(shown[i] - slope * known[i]);
  }
  return std::abs(median(offsets)) / slope;
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
