#pragma once

#include <fogline/process/roll_card.h>

#include <string>

namespace fogline {

/// Reads a roll card (TOML). Throws FileError with the line, the key and what was expected:
/// unknown keys, values of the wrong type or out of range, a missing name.
RollCard read_roll_card(const std::string& path);

}  // namespace fogline
