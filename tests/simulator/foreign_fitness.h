// What a person could read from a foreign scan.
#pragma once

#include "simulator/render.h"

#include <cstddef>
#include <vector>

namespace filmsim {

/// Puts right `expected_fitness` and `reason` that tell_truth() wrote: a person reads the channel
/// that tells most. `bare_px` are pixels of bare light, `clear_px` of clear film. Unfit where clear
/// film tells nothing in any channel, relative where bare light doesn't in any that clear film
/// does.
void judge_foreign(Simulated& simulated, const std::vector<std::size_t>& bare_px,
                   const std::vector<std::size_t>& clear_px);

}  // namespace filmsim
