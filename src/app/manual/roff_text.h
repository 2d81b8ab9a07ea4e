#pragma once

#include <string>
#include <string_view>

namespace fogline {

/// Text that may be filled and whose hyphens are hyphens, but for those of options: "--card". For
/// man(7), ASCII: signs beyond it are written by their code points.
std::string roff_prose(std::string_view text);

/// One line as it is typed: each hyphen is the one on the keyboard.
std::string roff_literal(std::string_view text);

/// The same for lines, each ended.
std::string roff_lines(std::string_view text);

}  // namespace fogline
