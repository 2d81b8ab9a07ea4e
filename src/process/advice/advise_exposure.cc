#include "process/advice/advise_exposure.h"

#include "process/advice/roll_signs.h"
#include "process/belief/normal_grid.h"

#include <algorithm>
#include <array>
#include <cmath>

namespace fogline {
namespace {

constexpr double thirds_a_stop = 3.0;
/// Beyond it the meter, shutter or aperture is at fault rather than the index.
constexpr double greatest_change_stops = 2.0;
/// A change must help in at least three of five cases (common practice, no source).
constexpr double least_chance_of_help = 0.6;

/// The part of exposure error that comes again, as believed.
struct HabitError {
  double stops = 0.0;
  double sd_stops = 0.0;
};

/// Of one roll's error part is habit (meter, index), part the chance of its scenes; the shares are
/// those of their variances.
HabitError habit_error(const Quantity& exposure_stops, const DevelopmentPriors& priors) {
  const double habit = priors.exposure_habit_sd_stops * priors.exposure_habit_sd_stops;
  const double chance = priors.exposure_scatter_stops * priors.exposure_scatter_stops;
  const double lasting = habit / (habit + chance);
  const double sd = exposure_stops.u95 / coverage_factor_95;
  return {lasting * exposure_stops.value,
          std::sqrt(lasting * lasting * sd * sd + lasting * chance)};
}

bool normal_leads(const CauseProbabilities& causes) {
  return causes.normal >= std::max({causes.under_exposed, causes.over_exposed,
                                    causes.under_developed, causes.over_developed});
}

Fact<ExposureReason> seen(const Quantity& exposure_stops) {
  return fact_of(
      exposure_stops.value > 0.0 ? ExposureReason::got_more_light : ExposureReason::got_less_light,
      {std::abs(exposure_stops.value), exposure_stops.u95});
}

/// Change in thirds of a stop; 0 where none is worth making.
double change_of(const HabitError& error) {
  const double wanted = std::clamp(-error.stops, -greatest_change_stops, greatest_change_stops);
  const double change = std::round(thirds_a_stop * wanted) / thirds_a_stop;
  const double chance_of_help =
      normal_share_below((std::abs(error.stops) - 0.5 * std::abs(change)) / error.sd_stops);
  return chance_of_help < least_chance_of_help ? 0.0 : change;
}

void say_change(const HabitError& error, const RollCard* card, ExposureAdvice& advice) {
  const double change = *advice.change_stops;
  advice.reasons.push_back(
      fact_of(change > 0.0 ? ExposureReason::give_more_light : ExposureReason::give_less_light,
              {std::abs(change)}));
  if (std::abs(error.stops) > greatest_change_stops) {
    advice.reasons.push_back(fact_of(ExposureReason::gross_error));
  }
  if (card != nullptr && card->exposure_index) {
    advice.exposure_index = nearest_exposure_index(*card->exposure_index * std::exp2(-change));
    advice.reasons.push_back(
        fact_of(ExposureReason::set_index, {*advice.exposure_index, *card->exposure_index}));
  }
}

/// Why nothing can be advised; nothing where something can.
std::optional<WhyUnknown> why_no_change(const AdviceGround& ground) {
  if (read_roll_signs(ground.roll, ground.findings).not_exposed >= likely) {
    return fact_of(Unknown::film_not_exposed);
  }
  const Known<Quantity>& exposure_stops = ground.light_or_time.exposure_stops;
  if (ground.light_or_time.judged() && exposure_stops) {
    return std::nullopt;
  }
  return exposure_stops.why() == WhyUnknown{} ? fact_of(Unknown::exposure_untold)
                                              : exposure_stops.why();
}

}  // namespace

double nearest_exposure_index(double exposure_index) {
  constexpr std::array dial{3.0,    4.0,    5.0,    6.0,    8.0,    10.0,   12.0,  16.0,   20.0,
                            25.0,   32.0,   40.0,   50.0,   64.0,   80.0,   100.0, 125.0,  160.0,
                            200.0,  250.0,  320.0,  400.0,  500.0,  640.0,  800.0, 1000.0, 1250.0,
                            1600.0, 2000.0, 2500.0, 3200.0, 4000.0, 5000.0, 6400.0};
  return *std::min_element(dial.begin(), dial.end(), [&](double a, double b) {
    return std::abs(std::log(a / exposure_index)) < std::abs(std::log(b / exposure_index));
  });
}

double sureness_of_light(const AdviceGround& ground) {
  const Known<Quantity>& stops = ground.light_or_time.exposure_stops;
  return stops ? std::abs(stops->value) / std::max(1e-6, stops->u95) : 0.0;
}

ExposureAdvice advise_exposure(const AdviceGround& ground, bool time_first) {
  ExposureAdvice advice;
  if (const auto why = why_no_change(ground)) {
    advice.change_stops = *why;
    return advice;
  }
  const Quantity& exposure_stops = *ground.light_or_time.exposure_stops;
  const HabitError error = habit_error(exposure_stops, ground.priors.development);
  advice.change_stops = normal_leads(*ground.light_or_time.causes) ? 0.0 : change_of(error);
  advice.reasons.push_back(seen(exposure_stops));
  if (*advice.change_stops == 0.0 || time_first) {
    advice.reasons.push_back(fact_of(*advice.change_stops == 0.0
                                         ? ExposureReason::no_error_worth_correcting
                                         : ExposureReason::time_first));
    advice.exposure_index = ground.card != nullptr ? ground.card->exposure_index : std::nullopt;
    advice.change_stops = 0.0;
    return advice;
  }
  say_change(error, ground.card, advice);
  return advice;
}

}  // namespace fogline
