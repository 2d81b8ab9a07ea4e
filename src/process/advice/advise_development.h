#pragma once

#include "process/advice/advise.h"

namespace fogline {

/// The next roll's time and temperature: the time, of those that a person would set, with the
/// greatest chance of landing within the aim's tolerance. Keeps the time where the contrast lies
/// within the tolerance, or where a change would help too seldom.
DevelopmentAdvice advise_development(const AdviceGround& ground);

}  // namespace fogline
