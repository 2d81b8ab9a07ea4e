#pragma once

#include <string>
#include <string_view>

namespace fogline {

/// A number in the form that a text of facts asks for (`words/fact_words.h` lists them): a count of
/// decimals, `+` for its sign, `clock`, `percent`, `stops`, `count`, `median`. Numbers never depend
/// on the locale. Throws std::logic_error for a form that isn't known.
std::string number_in_form(double value, std::string_view form);

}  // namespace fogline
