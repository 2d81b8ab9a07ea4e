#pragma once

#include <fogline/process/advice.h>

#include <optional>
#include <string_view>
#include <vector>

namespace fogline {

/// The usual cautions for developer, stop and fixer, a sentence each.
std::vector<std::string_view> safety_sentences();

/// Whether advice names a bath, so that the cautions must stand beside it: a recipe of the next
/// roll always does.
bool names_a_bath(const std::optional<Advice>& advice);

/// The cautions in one line, to stand beside a recipe; `safety_sentences` has them in full.
std::string_view safety_line();

}  // namespace fogline
