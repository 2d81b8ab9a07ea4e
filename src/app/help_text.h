#pragma once

#include <string>

namespace fogline {

/// `fogline --help` and `fogline help TOPIC`: `topic` is empty, "measure", "card" or "scanning".
std::string help_text(const std::string& topic);

}  // namespace fogline
