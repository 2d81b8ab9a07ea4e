#include "process/belief/weigh_light_and_time.h"

#include "process/advice/film_state.h"
#include "process/advice/further_measurement.h"
#include "process/belief/light_belief.h"
#include "process/belief/target_belief.h"
#include "process/causes/light_evidence.h"
#include "process/own_process_film.h"

#include <fogline/process/light_and_development.h>

#include <cmath>

namespace fogline {

namespace {

Unknown why_not(const LightSigns& signs) {
  if (!signs.readable) {
    return Unknown::no_density_scan;
  }
  if (signs.frames_in_sight > 0 && !shows_no_picture(signs)) {
    return Unknown::no_clear_film;
  }
  return Unknown::no_picture;
}

/// Mean and u95 of a belief from its first two moments.
Quantity quantity_of(double mean, double square) {
  const double variance = square > mean * mean ? square - mean * mean : 0.0;
  return {mean, coverage_factor_95 * std::sqrt(variance), {}, {}, {}, false};
}

void tell_numbers(const LightBelief& belief, LightOrTime& result) {
  double contrast = 0.0;
  double contrast_square = 0.0;
  double exposure = 0.0;
  double exposure_square = belief.exposure_sd_stops * belief.exposure_sd_stops;
  for (const BeliefPoint& point : belief.points) {
    contrast += point.weight * point.contrast_index;
    contrast_square += point.weight * point.contrast_index * point.contrast_index;
    exposure += point.weight * point.exposure_mean_stops;
    exposure_square += point.weight * point.exposure_mean_stops * point.exposure_mean_stops;
  }
  result.contrast_index = quantity_of(contrast, contrast_square);
  result.exposure_stops = quantity_of(exposure, exposure_square);
}

/// Says of all that is judged why it isn't.
LightOrTime& leave_open(Unknown why, LightOrTime& result) {
  result.causes = why;
  result.exposure_stops = why;
  result.contrast_index = why;
  return result;
}

}  // namespace

LightOrTime weigh_light_and_time(const RollMeasurement& roll, const Aim& aim,
                                 const RollPopulation& population, const RollCard* card) {
  LightOrTime result;
  if (const std::optional<Unknown> own = why_own_process(roll, card)) {
    result.latitude_stops = population.exposure_latitude_stops;
    return leave_open(*own, result);
  }
  if (roll.sensitometry && roll.sensitometry->readings.contrast_index) {
    result = weigh_target(*roll.sensitometry, aim, population);
    result.latitude_stops = population.exposure_latitude_stops;
    return result;
  }
  result.latitude_stops = population.exposure_latitude_stops;
  const LightSigns signs = gather_light_signs(roll);
  const ReadingScale scale = reading_scale(roll, population);
  result.evidence = light_evidence(signs, scale, aim, population);
  if (!signs.shadow || !signs.highlight || shows_no_picture(signs)) {
    return leave_open(why_not(signs), result);
  }
  const LightBelief belief = believe(signs, signs.frames, scale, aim, population);
  if (belief.points.empty()) {
    return leave_open(Unknown::unusual_roll, result);
  }
  result.causes = causes_of(belief, aim, population);
  tell_numbers(belief, result);
  result.would_tell_most = further_measurement(belief, signs, scale, aim, population);
  return result;
}

}  // namespace fogline
