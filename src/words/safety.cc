#include "words/safety.h"

#include <algorithm>
#include <array>
#include <string>

// What home workers are told by public health and waste offices: a state fact sheet for home
// photographers (eyes, skin, children, sewage), and 40 CFR 261.24 for the silver limit.

namespace fogline {

std::vector<std::string_view> safety_sentences() {
  return {
      "Developer, stop and fixer: wear gloves, guard the eyes, let fresh air in, and keep children "
      "and food away.",
      "What has held a bath never goes back to food: keep measures and bottles apart, labelled and "
      "closed.",
      "Never add acid to fixer or warm it: it gives off sulfur dioxide. Some people react to "
      "sulfites.",
      "Used fixer carries silver and doesn't belong in the drain: give it to a licensed "
      "collection. "
      "(In the United States waste above 5 mg/L of silver counts as hazardous, 40 CFR 261.24; "
      "other places have their own rules.)",
      "The maker's safety sheet and the rules of the place come before anything said here.",
  };
}

bool names_a_bath(std::string_view text) {
  std::string lower(text);
  std::transform(lower.begin(), lower.end(), lower.begin(),
                 [](char c) { return c >= 'A' && c <= 'Z' ? static_cast<char>(c + 32) : c; });
  // "stop" alone is also a factor of two of light; "developed" alone names no bath.
  constexpr std::array<std::string_view, 7> baths{"developer", "stop bath", "fixer",  "refix",
                                                  "fixing",    "hypo",      "sulfite"};
  return std::any_of(baths.begin(), baths.end(),
                     [&](std::string_view bath) { return lower.find(bath) != std::string::npos; });
}

bool is_caution(std::string_view text) {
  return text.find("gloves") != std::string_view::npos;
}

std::string_view safety_line() {
  return "Gloves, guarded eyes, fresh air; the maker's sheet first.";
}

}  // namespace fogline
