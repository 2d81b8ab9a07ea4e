#pragma once

#include <string_view>
#include <vector>

namespace fogline {

/// The usual cautions for developer, stop and fixer, a sentence each.
std::vector<std::string_view> safety_sentences();

/// Whether a text names a bath of film processing, so that the cautions must stand beside it.
bool names_a_bath(std::string_view text);

/// Whether a sentence is itself the usual caution for baths, which a report tells in one place.
bool is_caution(std::string_view text);

/// The cautions in one line, to stand beside a recipe; `safety_sentences` has them in full.
std::string_view safety_line();

}  // namespace fogline
