#pragma once

#include "process/process_priors.h"

#include <fogline/process/advice.h>
#include <fogline/process/finding.h>
#include <fogline/process/light_and_development.h>

#include <vector>

namespace fogline {

/// Everything that advice on the next roll rests on.
struct AdviceGround {
  const RollMeasurement& roll;
  const LightOrTime& light_or_time;
  const std::vector<Finding>& findings;
  const Aim& aim;
  const ProcessPriors& priors;
  /// nullptr where none was given.
  const RollCard* card = nullptr;
};

/// Advice from one roll and priors. What can't be told is absent and its reasons say why.
Advice advise(const AdviceGround& ground);

}  // namespace fogline
