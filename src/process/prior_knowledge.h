#pragma once

#include "process/process_priors.h"
#include "process/roll_population.h"
#include "roll/scan_knowledge.h"

namespace fogline {

/// What is known before the roll is looked at: data of `calibration/`.
struct PriorKnowledge {
  RollPopulation population;
  ProcessPriors process;
  ScanKnowledge scan;

  bool operator==(const PriorKnowledge&) const = default;
};

}  // namespace fogline
