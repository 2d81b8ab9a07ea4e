#pragma once

#include <string>
#include <string_view>

namespace fogline {

/// Columns that UTF-8 text takes on a terminal: one a code point (no wide signs are printed).
std::size_t columns(std::string_view text);

/// Text filled with blanks on the right to a width in columns.
std::string padded(std::string text, std::size_t width);

/// Text safe on a terminal: control characters (file names may hold escape codes) become "?".
std::string printable(std::string_view text);

}  // namespace fogline
