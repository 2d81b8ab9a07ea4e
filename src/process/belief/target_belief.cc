#include "process/belief/target_belief.h"

#include "process/belief/cause_regions.h"

#include <algorithm>
#include <cmath>

namespace fogline {

namespace {

/// Metered tones lie ten times above the speed point where the index is the film's ISO speed; what
/// meters and habits leave open of that, stops (standard uncertainty; common practice, no source).
constexpr double usual_placing_log_h = 1.0;
constexpr double placing_doubt_stops = 0.2;

void tell_light(const Sensitometry& read, LightOrTime& result) {
  const auto& speed_point = read.readings.speed_point_log_h;
  if (!read.scale.metered_log_h) {
    result.exposure_stops = Unknown::nothing_metered;
  } else if (!speed_point) {
    result.exposure_stops = speed_point.why();
  } else {
    Quantity stops;
    stops.value =
        (*read.scale.metered_log_h - usual_placing_log_h - speed_point->value) / stop_log_h;
    stops.u95 = std::hypot(speed_point->u95 / stop_log_h, coverage_factor_95 * placing_doubt_stops);
    result.exposure_stops = stops;
  }
}

void tell_evidence(const Sensitometry& read, LightOrTime& result) {
  const auto used = std::count_if(read.curve.steps.begin(), read.curve.steps.end(),
                                  [](const ExposedStep& step) { return !step.left_out; });
  result.evidence.push_back(fact_of(
      Evidence::known_exposures,
      {static_cast<double>(used), result.contrast_index->value, result.contrast_index->u95}));
  if (result.exposure_stops) {
    result.evidence.push_back(fact_of(
        Evidence::speed_point,
        {-read.readings.speed_point_log_h->value / stop_log_h, usual_placing_log_h / stop_log_h}));
  }
}

}  // namespace

LightOrTime weigh_target(const Sensitometry& read, const Aim& aim,
                         const RollPopulation& population) {
  LightOrTime result;
  result.contrast_index = *read.readings.contrast_index;
  tell_light(read, result);
  tell_evidence(read, result);
  const double contrast = result.contrast_index->value;
  const double contrast_sd = result.contrast_index->u95 / coverage_factor_95;
  const double stops = result.exposure_stops ? result.exposure_stops->value : 0.0;
  constexpr double no_doubt_stops = 0.01;
  const double stops_sd =
      result.exposure_stops ? result.exposure_stops->u95 / coverage_factor_95 : no_doubt_stops;
  const CauseRegions regions(aim, population);
  constexpr double reach = 3.5;
  constexpr int half_points = 20;
  CauseProbabilities causes;
  double sum = 0.0;
  for (int i = -half_points; i <= half_points; ++i) {
    const double z = reach * i / half_points;
    sum += std::exp(-0.5 * z * z);
  }
  for (int i = -half_points; i <= half_points; ++i) {
    const double z = reach * i / half_points;
    add_causes(causes, regions.causes(contrast + z * contrast_sd, stops, stops_sd),
               std::exp(-0.5 * z * z) / sum);
  }
  result.causes = causes;
  return result;
}

}  // namespace fogline
