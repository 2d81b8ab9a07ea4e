#pragma once

#include <string>

namespace fogline {

/// `fogline help card`: every key of the roll card, with an invented example.
std::string card_help();

}  // namespace fogline
