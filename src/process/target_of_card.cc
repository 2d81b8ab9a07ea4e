#include "sensitometry/shutter_times.h"

#include <fogline/process/roll_card.h>

#include <algorithm>
#include <cmath>

namespace fogline {

namespace {

/// Standard uncertainties, stops (common practice, no source).
constexpr double usual_doubt_stops = 0.2;
constexpr double marked_doubt_stops = 0.15;
constexpr double filter_doubt_stops = 0.05;
/// Films lose speed in long exposures, by how much differs: this much doubt a doubling beyond one
/// second.
constexpr double reciprocity_doubt_stops = 0.05;

double usual_doubt(const TargetCard& card) {
  if (card.doubt_stops) {
    return *card.doubt_stops;
  }
  if (!card.by) {
    return card.times_s.empty() ? usual_doubt_stops : marked_doubt_stops;
  }
  return *card.by == "filter" ? filter_doubt_stops : marked_doubt_stops;
}

BracketTarget bracket_of(const TargetCard& card) {
  BracketTarget bracket;
  bracket.first_frame = card.first_frame;
  bracket.stops = card.stops;
  bracket.doubt_stops.assign(card.stops.size(), usual_doubt(card));
  if (card.times_s.empty()) {
    return bracket;
  }
  std::vector<double> sorted = card.times_s;
  std::sort(sorted.begin(), sorted.end());
  const double metered = true_time_s(card.metered_time_s.value_or(sorted[sorted.size() / 2]));
  for (const double marked : card.times_s) {
    const double time = true_time_s(marked);
    bracket.stops.push_back(std::log2(time / metered));
    const double long_stops = std::max(0.0, std::log2(time));
    bracket.doubt_stops.push_back(
        std::hypot(usual_doubt(card), reciprocity_doubt_stops * long_stops));
  }
  return bracket;
}

}  // namespace

ExposureTarget target_of_card(const RollCard& card, std::optional<WedgeReference> reference) {
  ExposureTarget target;
  target.exposure_index = card.exposure_index;
  target.metered = card.metered;
  if (card.target && card.target->kind == TargetKind::bracket) {
    target.bracket = bracket_of(*card.target);
  } else if (card.target && reference) {
    target.wedge = ExposedWedgeTarget{std::move(*reference), card.target->h_at_zero_lux_s};
  }
  return target;
}

}  // namespace fogline
