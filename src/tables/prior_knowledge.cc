#include "tables/development_priors.h"
#include "tables/roll_population.h"

#include <fogline/tables/prior_knowledge.h>

namespace fogline {

PriorKnowledge shipped_prior_knowledge() {
  return {roll_population_from_calibration(), process_priors_from_calibration()};
}

}  // namespace fogline
