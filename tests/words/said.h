// What no text may hold, whatever it says.
#pragma once

#include <cctype>
#include <string>
#include <string_view>
#include <vector>

namespace fogline {

/// Whether a word stands in a text by itself: "nan" in "nan." but not in "finance".
inline bool says_word(std::string_view text, std::string_view word) {
  const auto is_letter = [&](std::size_t at) {
    return at < text.size() && std::isalnum(static_cast<unsigned char>(text[at])) != 0;
  };
  for (std::size_t at = text.find(word); at != std::string_view::npos;
       at = text.find(word, at + 1)) {
    if ((at == 0 || !is_letter(at - 1)) && !is_letter(at + word.size())) {
      return true;
    }
  }
  return false;
}

/// What is wrong with the form of a text; empty where nothing is.
inline std::string fault_of(std::string_view text) {
  if (text.empty()) {
    return "is empty";
  }
  if (text.find_first_of("{}") != std::string_view::npos) {
    return "has a brace that nothing filled";
  }
  if (text.find("  ") != std::string_view::npos) {
    return "has two blanks";
  }
  if (text.front() == ' ' || text.back() == ' ') {
    return "has a blank at its end";
  }
  for (const std::string_view word : {"nan", "inf", "-nan", "-inf"}) {
    if (says_word(text, word)) {
      return "holds what is no number";
    }
  }
  return "";
}

/// The same of all texts, the faulty one told.
inline std::string fault_of(const std::vector<std::string>& texts) {
  for (const std::string& text : texts) {
    if (const std::string fault = fault_of(std::string_view(text)); !fault.empty()) {
      return "\"" + text + "\" " + fault;
    }
  }
  return "";
}

}  // namespace fogline
