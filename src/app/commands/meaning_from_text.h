#pragma once

#include "app/command_line/usage_error.h"
#include "app/commands/option_values.h"
#include "app/commands/option_words.h"

#include <algorithm>
#include <string>

namespace fogline {

/// The row of a table of words that has `text`; nullptr where none has.
template <typename Words>
auto row_of(const Words& table, const std::string& text) -> decltype(table.data()) {
  const auto found =
      std::find_if(table.begin(), table.end(), [&](const auto& row) { return row.word == text; });
  return found == table.end() ? nullptr : &*found;
}

/// What `text` means to an option (its name without hyphens) that takes words alone. Throws
/// UsageError, which lists them, for any other text.
template <typename Words>
auto meaning_from_text(const std::string& option, const Words& table, const std::string& text) {
  const auto* row = row_of(table, text);
  if (row == nullptr) {
    throw UsageError("--" + option + " is " + choice_of(words_of(table)) + ", not \"" + text +
                     "\"");
  }
  return row->meaning;
}

}  // namespace fogline
