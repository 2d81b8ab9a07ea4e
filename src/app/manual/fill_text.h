#pragma once

#include "app/command_line/command_spec.h"

#include <string>
#include <string_view>
#include <vector>

namespace fogline {

/// A paragraph broken at words to `width` columns, its lines indented; the first line by
/// `first_indent`, which may hold a word that stands before the paragraph. Ends with a line end.
std::string filled(std::string_view text, int width, std::string_view first_indent,
                   std::string_view indent);

/// A command as typed, broken by backslashes where it is wider than `width`.
std::string typed_line(std::string_view line, int width, std::string_view indent);

/// Each thing that may stand for an option's value: its placeholder and its words.
std::vector<std::string> argument_parts(const OptionSpec& option);

/// What help calls an option's value: "density|stops", "FILE|none"; empty for a flag.
std::string argument_text(const OptionSpec& option);

/// What an option does, and what holds without it.
std::string option_sentences(const OptionSpec& option);

/// "measure the scans" as the sentence "Measure the scans."
std::string sentence_of_summary(std::string_view summary);

}  // namespace fogline
