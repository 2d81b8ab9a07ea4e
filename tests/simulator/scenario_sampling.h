// Populations of scans: who scans what, with which device, and how well.
#pragma once

#include "simulator/scenario.h"

#include <cstdint>
#include <string>
#include <vector>

namespace filmsim {

/// Names of all populations, for help texts and loops.
const std::vector<std::string>& scenario_kinds();

/// Those whose laws the analyser wasn't built on; not among scenario_kinds().
const std::vector<std::string>& foreign_kinds();

/// One scan of a population; the same kind and seed give the same scenario. Throws
/// std::invalid_argument for an unknown kind.
Scenario sample_scenario(const std::string& kind, std::uint64_t seed);

}  // namespace filmsim
