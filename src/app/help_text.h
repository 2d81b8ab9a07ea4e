#pragma once

#include <string>

namespace fogline {

/// `fogline --help`, `fogline help measure`, `fogline help scanning`: `topic` is empty, "measure"
/// or "scanning".
std::string help_text(const std::string& topic);

}  // namespace fogline
