#include "process/advice/advise.h"
#include "process/belief/weigh_light_and_time.h"
#include "process/causes/find_causes.h"
#include "process/prior_knowledge.h"

#include <fogline/process/judge_roll.h>

namespace fogline {

Judgement judge_roll(const RollMeasurement& roll, const RollCard* card,
                     std::optional<double> wanted_contrast_index, const PriorKnowledge& knowledge) {
  Judgement judgement;
  judgement.aim = aim_for(card, wanted_contrast_index);
  judgement.light_or_time = weigh_light_and_time(roll, judgement.aim, knowledge.population, card);
  judgement.curve = judge_curve(roll, judgement.aim);
  judgement.findings =
      find_causes(roll, judgement.light_or_time, judgement.aim, knowledge.population, card);
  if (!roll.scans.empty()) {
    judgement.advice = advise({roll, judgement.light_or_time, judgement.findings, judgement.aim,
                               knowledge.process, card});
  }
  return judgement;
}

}  // namespace fogline
