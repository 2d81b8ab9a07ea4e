#include "density/assign_steps.h"

#include "numerics/robust.h"

#include <algorithm>
#include <cmath>
#include <limits>
#include <optional>

namespace fogline {

namespace {

/// So many of the lightest unclipped steps tell the slope of the scanner's scale there.
constexpr std::size_t slope_steps = 7;
/// But no further than this range of density, beyond which responses bend, if four steps lie in it.
constexpr double slope_range = 0.8;
constexpr std::size_t fewest_slope_steps = 4;
/// The best place in the reference must fit so much better than any other: its misfit at most this
/// part of the next one's.
constexpr double clear_part = 0.5;
/// Steps are lost in clipped light no deeper than this.
constexpr int most_hidden_in_light = 3;
/// The film's end is told to a step.
constexpr int end_tolerance = 1;

/// How far the straight line through the lightest steps misses the bare light, as a density, where
/// the wedge begins at reference step `first`; infinite where no line can be drawn. The line is the
/// median of those through two steps each (Theil 1950), which one dirty step doesn't move.
double misfit(const std::vector<SeenStep>& seen, const WedgeReference& reference, int first) {
  std::vector<double> known;
  std::vector<double> shown;
  for (const SeenStep& step : seen) {
    const int index = first + step.slot;
    const double density = reference.steps[static_cast<std::size_t>(index)].density;
    const bool near = known.size() < fewest_slope_steps || density - known.front() < slope_range;
    if (!step.clipped && known.size() < slope_steps && near) {
      known.push_back(density);
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

std::vector<double> misfits_at(const std::vector<SeenStep>& seen, const WedgeReference& reference,
                               int places) {
  std::vector<double> misfits;
  for (int i = 0; i < places; ++i) {
    misfits.push_back(misfit(seen, reference, i));
  }
  return misfits;
}

/// The place in the reference at which the line through the lightest steps meets the bare light, if
/// one is much better than all others.
std::optional<int> clear_place(const std::vector<double>& misfits) {
  const auto best = std::min_element(misfits.begin(), misfits.end());
  for (auto other = misfits.begin(); other != misfits.end(); ++other) {
    if (other != best && !(*best < clear_part * *other)) {
      return std::nullopt;
    }
  }
  return static_cast<int>(best - misfits.begin());
}

/// Whether the first place fits the bare light about as well as any other.
bool first_fits(const std::vector<double>& misfits) {
  const double best = *std::min_element(misfits.begin(), misfits.end());
  return clear_part * misfits.front() <= best;
}

}  // namespace

StepAssignment assign_steps(const std::vector<SeenStep>& seen, const WedgeReference& reference,
                            const WedgeEnds& ends) {
  StepAssignment assignment;
  const int length = seen.back().slot + 1;
  const int known = static_cast<int>(reference.steps.size());
  const auto refused = [&](Refusal why) {
    return Fact<Refusal>{why, {static_cast<double>(length), static_cast<double>(known)}, {}, {}};
  };
  const int told = reference.first_in_sight.value_or(1) - 1;
  if (told + length > known) {
    assignment.failure = refused(Refusal::more_steps_than_reference);
    return assignment;
  }
  std::optional<int> first =
      reference.first_in_sight || length == known ? std::optional(told) : std::nullopt;
  std::vector<double> misfits;
  if (!first && ends.above_bare_light) {
    misfits = misfits_at(seen, reference, known - length + 1);
    first = clear_place(misfits);
  }
  if (!first && ends.unseen_dark_steps) {
    const int at_light_end = known - length - *ends.unseen_dark_steps;
    if (at_light_end >= 0 && at_light_end <= most_hidden_in_light) {
      first = at_light_end;
      assignment.counted_from_dark_end = true;
    }
  }
  const bool light_end = ends.light_end_in_sight && !seen.front().clipped;
  if (!first && light_end && (misfits.empty() || first_fits(misfits))) {
    first = 0;
    assignment.counted_from_light_end = true;
  }
  if (!first) {
    assignment.failure = refused(ends.above_bare_light ? Refusal::steps_untold_by_bare_light
                                                       : Refusal::steps_without_bare_light);
    return assignment;
  }
  if (ends.unseen_dark_steps && known - *first - length > *ends.unseen_dark_steps + end_tolerance) {
    assignment.failure = refused(Refusal::wedge_ends_early);
    assignment.failure->numbers.push_back(static_cast<double>(length + *ends.unseen_dark_steps));
    return assignment;
  }
  for (const SeenStep& step : seen) {
    assignment.reference_index.push_back(*first + step.slot);
  }
  return assignment;
}

}  // namespace fogline
