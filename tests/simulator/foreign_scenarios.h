// Populations of foreign scans.
#pragma once

#include "simulator/random.h"
#include "simulator/scenario.h"

#include <functional>
#include <string>
#include <utility>
#include <vector>

namespace filmsim {

/// Name and sampler of each foreign kind.
const std::vector<std::pair<std::string, std::function<Scenario(Random&)>>>& foreign_samplers();

}  // namespace filmsim
