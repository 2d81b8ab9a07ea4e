#pragma once

#include "process/advice/advise.h"

namespace fogline {

/// The next roll's time and temperature: the time, of those that a person would set, with the
/// greatest chance of landing within the aim's tolerance. Keeps the time where the contrast lies
/// within the tolerance, where a change would gain too little or help too seldom, and where
/// `light_first` says that the light is to be changed before it.
DevelopmentAdvice advise_development(const AdviceGround& ground, bool light_first = false);

/// This roll's contrast is off the aim beyond its tolerance and by this many of its u95; 0 where it
/// isn't known.
double sureness_of_time(const AdviceGround& ground);

}  // namespace fogline
