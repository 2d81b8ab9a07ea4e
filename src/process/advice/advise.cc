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

}  // namespace

Advice advise(const AdviceGround& ground) {
  Advice advice;
  const RollSigns signs = read_roll_signs(ground.roll, ground.findings);
  const BathPriors& baths = ground.priors.baths;
  advice.development = advise_development(ground);
  advice.exposure = advise_exposure(ground);
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
