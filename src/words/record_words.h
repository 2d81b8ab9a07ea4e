#pragma once

#include <string>

namespace fogline {

/// Why a record has no roll card.
std::string no_card_sentence();
/// Why a record has no advice.
std::string no_advice_sentence();
/// Why advice has no number, where nobody said so.
std::string silent_roll_sentence();

}  // namespace fogline
