#pragma once

#include "process/roll_population.h"
#include "tables/knowledge_table.h"

namespace fogline {

/// The population of rolls from `roll_population.toml`, and what it takes from `devices.toml` and
/// `films.toml`. Throws FileError as `devices_from`.
RollPopulation roll_population_from(const KnowledgeTable& rolls, const KnowledgeTable& devices,
                                    const KnowledgeTable& films);

}  // namespace fogline
