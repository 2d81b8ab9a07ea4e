#include "process/advice/film_state.h"
#include "process/advice/further_measurement.h"
#include "process/belief/light_belief.h"
#include "process/belief/target_belief.h"
#include "process/causes/light_evidence.h"

#include <fogline/process/light_or_time.h>

#include <cmath>

namespace fogline {

namespace {

std::string why_not(const LightSigns& signs) {
  if (!signs.readable) {
    return "No scan of this roll tells densities.";
  }
  if (signs.frames_in_sight > 0 && !shows_no_picture(signs)) {
    return "The pictures' densities above clear film can't be read: no clear film is in sight.";
  }
  return "No picture is in sight to judge light and development by.";
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

}  // namespace

LightOrTime weigh_light_and_time(const RollMeasurement& roll, const Aim& aim,
                                 const RollPopulation& population, const RollCard* card) {
  LightOrTime result;
  if (roll.sensitometry && roll.sensitometry->readings.contrast_index) {
    result = weigh_target(*roll.sensitometry, aim, population);
    result.latitude_stops = population.exposure_latitude_stops;
    return result;
  }
  result.latitude_stops = population.exposure_latitude_stops;
  const LightSigns signs = gather_light_signs(roll);
  const ReadingScale scale = reading_scale(roll, card, population);
  result.evidence = light_evidence(signs, scale, aim, population);
  if (!signs.shadow || !signs.highlight || shows_no_picture(signs)) {
    result.reason = why_not(signs);
    return result;
  }
  const LightBelief belief = believe(signs, signs.frames, scale, aim, population);
  if (belief.points.empty()) {
    result.reason =
        "Shadows and highlights fit no usual roll at all: flat subjects, fog within the pictures, "
        "or a tone curve that isn't what the scan says.";
    return result;
  }
  result.judged = true;
  result.causes = causes_of(belief, aim, population);
  tell_numbers(belief, result);
  result.would_tell_most = further_measurement(belief, signs, scale, aim, population);
  return result;
}

}  // namespace fogline
