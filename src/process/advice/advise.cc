#include "process/advice/advise.h"

#include "process/advice/advise_baths.h"
#include "process/advice/advise_development.h"
#include "process/advice/advise_exposure.h"
#include "process/advice/roll_signs.h"
#include "process/advice/this_roll.h"
#include "process/own_process_film.h"

namespace fogline {
namespace {

BathAdvice own_process() {
  BathAdvice advice;
  advice.reasons.push_back(fact_of(BathReason::own_process));
  return advice;
}

/// A roll with light and time both changed tells of neither: unless each is sure by itself only the
/// surer is changed.
void change_one_at_a_time(const AdviceGround& ground, Advice& advice) {
  const bool time_changes = advice.development.change_percent.value_or(0.0) != 0.0;
  const bool light_changes = advice.exposure.change_stops.value_or(0.0) != 0.0;
  const double time = sureness_of_time(ground);
  const double light = sureness_of_light(ground);
  constexpr double sure = 1.0;
  if (!time_changes || !light_changes || (time > sure && light > sure)) {
    return;
  }
  if (light >= time) {
    advice.development = advise_development(ground, true);
  } else {
    advice.exposure = advise_exposure(ground, true);
  }
}

}  // namespace

Advice advise(const AdviceGround& ground) {
  Advice advice;
  const RollSigns signs = read_roll_signs(ground.roll, ground.findings);
  const BathPriors& baths = ground.priors.baths;
  advice.development = advise_development(ground);
  advice.exposure = advise_exposure(ground);
  change_one_at_a_time(ground, advice);
  if (why_own_process(ground.roll, ground.card)) {
    advice.stop = advice.fix = advice.wash = own_process();
  } else {
    advice.stop = advise_stop(ground.card, signs, baths);
    advice.fix = advise_fix(ground.card, signs, baths);
    advice.wash = advise_wash(ground.card, signs, baths);
  }
  advice.this_roll = help_this_roll(ground, signs);
  return advice;
}

}  // namespace fogline
