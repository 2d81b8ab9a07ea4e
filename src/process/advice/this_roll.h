#pragma once

#include "process/advice/advise.h"
#include "process/advice/roll_signs.h"

#include <vector>

namespace fogline {

/// What can still be done for the film in hand, in the order that harms nothing: a look, fixer and
/// wash, sulfite, acid only after rinsing, cleaning and re-soaking, light last; then how to print
/// what no bath mends. Says first and plainly where nothing is needed.
std::vector<Fact<RescueStep>> help_this_roll(const AdviceGround& ground, const RollSigns& signs);

}  // namespace fogline
