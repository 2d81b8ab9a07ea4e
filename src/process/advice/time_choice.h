#pragma once

#include "process/belief/development_belief.h"

#include <fogline/process/light_and_development.h>

#include <vector>

namespace fogline {

/// A developing time as a person would set it: to 15 seconds below 10 minutes, to 30 above.
double settable_time_s(double seconds);

/// The shares of this roll's time that a person could set next: times on the clock where this
/// roll's time is known, steps of 5 % else. `centre` scales all of them (1; with a change of
/// temperature about the inverse factor of the rate). From half to twice: beyond that one roll says
/// nothing.
std::vector<double> settable_shares(std::optional<double> time_s, double centre);

/// The share of this roll's time with the greatest chance of landing within the aim's tolerance.
double best_share(const DevelopmentBelief& belief, const Aim& aim,
                  const std::vector<double>& shares);

}  // namespace fogline
