#pragma once

#include <string_view>

namespace fogline {

/// Whether standard output is a terminal that wants bold and dim (NO_COLOR unset, TERM not dumb).
bool standard_output_wants_color();

/// Columns for text on standard output: the terminal's, 100 at most; 80 in a pipe.
int standard_output_width();

/// Writes all of `bytes` to standard output. Throws FileError where it can't, a full disk behind a
/// redirection say.
void write_standard_output(std::string_view bytes);

/// One sentence on standard error, after the program's name; its full stop is added where missing.
void complain(std::string_view sentence);

}  // namespace fogline
