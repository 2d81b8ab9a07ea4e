#pragma once

#include "process/prior_knowledge.h"
#include "tables/knowledge_table.h"

#include <array>

namespace fogline {

/// The files of `calibration/` that hold prior knowledge.
inline constexpr std::array<std::string_view, 7> knowledge_files{
    "baths.toml", "development.toml",     "devices.toml", "films.toml",
    "marks.toml", "roll_population.toml", "tints.toml"};

/// Reads all of them. Throws FileError with file, line and key where a key is missing, unknown, of
/// another type or out of range, or where a table names no source.
PriorKnowledge prior_knowledge_from(const CalibrationText& text_of);

}  // namespace fogline
