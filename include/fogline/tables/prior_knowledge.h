#pragma once

#include <fogline/process/judge_roll.h>

namespace fogline {

/// The data of `calibration/` as this build ships it.
PriorKnowledge shipped_prior_knowledge();

}  // namespace fogline
