#include "process/advice/advise_exposure.h"

#include "process/advice/roll_signs.h"
#include "process/advice/spoken_numbers.h"
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

std::string seen(const Quantity& exposure_stops) {
  const bool more = exposure_stops.value > 0.0;
  return "This roll got about " + fixed_text(std::abs(exposure_stops.value), 1) + " stops " +
         (more ? "more" : "less") + " light than usual (95 in 100: within " +
         fixed_text(exposure_stops.u95, 1) + " stops of it).";
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
  const bool more = *advice.change_stops > 0.0;
  advice.reasons.push_back(
      "Give " + stops_text(*advice.change_stops) + (more ? " more" : " less") +
      " light: the part of the error that habit explains and that comes again, the rest being the "
      "chance of one roll's scenes (shares are common practice, no source).");
  if (std::abs(error.stops) > greatest_change_stops) {
    advice.reasons.emplace_back(
        "So large an error points to meter, shutter, aperture or a wrong setting: look there "
        "first.");
  }
  if (card != nullptr && card->exposure_index) {
    advice.exposure_index =
        nearest_exposure_index(*card->exposure_index * std::exp2(-*advice.change_stops));
    advice.reasons.push_back("Set exposure index " + fixed_text(*advice.exposure_index, 0) +
                             " instead of " + fixed_text(*card->exposure_index, 0) + ".");
  }
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

ExposureAdvice advise_exposure(const AdviceGround& ground) {
  ExposureAdvice advice;
  const RollSigns signs = read_roll_signs(ground.roll, ground.findings);
  if (signs.not_exposed >= likely) {
    advice.reasons.emplace_back(
        "The film wasn't exposed: watch the rewind crank turn while winding on, and look through "
        "the open back at the shutter.");
    return advice;
  }
  if (!ground.light_or_time.judged || !ground.light_or_time.exposure_stops) {
    const LightOrTime& weighed = ground.light_or_time;
    advice.reasons.push_back(!weighed.reason.empty()            ? weighed.reason
                             : !weighed.exposure_reason.empty() ? weighed.exposure_reason
                                                                : "This roll's exposure couldn't "
                                                                  "be told.");
    return advice;
  }
  const Quantity& exposure_stops = *ground.light_or_time.exposure_stops;
  const HabitError error = habit_error(exposure_stops, ground.priors.development);
  advice.change_stops = normal_leads(ground.light_or_time.causes) ? 0.0 : change_of(error);
  advice.reasons.push_back(seen(exposure_stops));
  if (*advice.change_stops == 0.0) {
    advice.reasons.emplace_back(
        "That is no error worth correcting on the word of one roll: expose as before.");
    advice.exposure_index = ground.card != nullptr ? ground.card->exposure_index : std::nullopt;
    advice.change_stops = 0.0;
    return advice;
  }
  say_change(error, ground.card, advice);
  return advice;
}

}  // namespace fogline
