#include "process/belief/target_belief.h"

#include "process/advice/spoken_numbers.h"
#include "process/belief/cause_regions.h"

#include <algorithm>
#include <cmath>

namespace fogline {

namespace {

/// Metered tones lie ten times above the speed point where the index is the film's ISO speed; what
/// meters and habits leave open of that, stops (standard uncertainty; common practice, no source).
constexpr double usual_placing_log_h = 1.0;
constexpr double placing_doubt_stops = 0.2;

std::string with_doubt(const Quantity& quantity, int decimals) {
  return fixed_text(quantity.value, decimals) + " ± " + fixed_text(quantity.u95, decimals);
}

/// Why a curve has no speed point, as a clause.
std::string spoken(const WhyUnknown& why) {
  const auto log_h = [&](std::size_t i) {
    const double value = i < why.numbers.size() ? why.numbers[i] : 0.0;
    return (value <= -0.005 ? "−" : "") + fixed_text(std::abs(value), 2);
  };
  switch (why.kind) {
    case Unknown::needs_less_exposure:
      return "it needs the curve from log H " + log_h(0) + ", and the least exposure is " +
             log_h(1);
    case Unknown::needs_more_exposure:
      return "it needs the curve up to log H " + log_h(0) + ", and the greatest exposure is " +
             log_h(1);
    case Unknown::draws_too_short:
      return "the steps leave curves possible that don't reach far enough";
    case Unknown::bracket_fits_turned:
      return "the bracket fits the exposures on the card another way as well (film the other way "
             "round)";
    case Unknown::bracket_fits_shifted:
      return "the bracket fits the exposures on the card another way as well (beginning with "
             "another frame)";
    case Unknown::wedge_place_unsure:
      return "which step of the printed wedge is which isn't sure";
    default:
      return "the curve doesn't reach far enough";
  }
}

void tell_light(const Sensitometry& read, LightOrTime& result) {
  const auto& speed_point = read.readings.speed_point_log_h;
  if (!read.scale.metered_log_h) {
    result.exposure_reason = "Nothing on this roll was metered; only development was judged.";
  } else if (!speed_point) {
    result.exposure_reason = "The speed point can't be read: " + spoken(speed_point.why()) + ".";
  } else {
    Quantity stops;
    stops.value =
        (*read.scale.metered_log_h - usual_placing_log_h - speed_point->value) / stop_log_h;
    stops.u95 = std::hypot(speed_point->u95 / stop_log_h, coverage_factor_95 * placing_doubt_stops);
    result.exposure_stops = stops;
  }
  result.light_judged = result.exposure_stops.has_value();
}

void tell_evidence(const Sensitometry& read, LightOrTime& result) {
  const auto used = std::count_if(read.curve.steps.begin(), read.curve.steps.end(),
                                  [](const ExposedStep& step) { return !step.left_out; });
  result.evidence.push_back("Characteristic curve through " + std::to_string(used) +
                            " known exposures: contrast index " +
                            with_doubt(*result.contrast_index, 3) + ".");
  if (result.exposure_stops) {
    result.evidence.push_back("The film reaches its speed point (0.10 above base plus fog) " +
                              fixed_text(-read.readings.speed_point_log_h->value / stop_log_h, 1) +
                              " stops under the metered exposure; " +
                              fixed_text(usual_placing_log_h / stop_log_h, 1) + " is usual.");
  }
}

}  // namespace

LightOrTime weigh_target(const Sensitometry& read, const Aim& aim,
                         const RollPopulation& population) {
  LightOrTime result;
  result.contrast_index = read.readings.contrast_index.optional();
  tell_light(read, result);
  tell_evidence(read, result);
  const double contrast = result.contrast_index->value;
  const double contrast_sd = result.contrast_index->u95 / coverage_factor_95;
  const double stops = result.light_judged ? result.exposure_stops->value : 0.0;
  constexpr double no_doubt_stops = 0.01;
  const double stops_sd =
      result.light_judged ? result.exposure_stops->u95 / coverage_factor_95 : no_doubt_stops;
  const CauseRegions regions(aim, population);
  constexpr double reach = 3.5;
  constexpr int half_points = 20;
  double sum = 0.0;
  for (int i = -half_points; i <= half_points; ++i) {
    const double z = reach * i / half_points;
    sum += std::exp(-0.5 * z * z);
  }
  for (int i = -half_points; i <= half_points; ++i) {
    const double z = reach * i / half_points;
    add_causes(result.causes, regions.causes(contrast + z * contrast_sd, stops, stops_sd),
               std::exp(-0.5 * z * z) / sum);
  }
  result.judged = true;
  return result;
}

}  // namespace fogline
