#include "app/manual/roff_text.h"

#include <array>
#include <cstdint>
#include <cstdio>

namespace fogline {
namespace {

// The code point of the UTF-8 sequence at `at`, which is moved behind it. The texts are the
// program's own, so the sequences are whole.
std::uint32_t next_code_point(std::string_view text, std::size_t& at) {
  const auto byte = [&](std::size_t i) { return static_cast<unsigned char>(text[i]); };
  const unsigned char first = byte(at++);
  std::uint32_t code = first;
  if (first >= 0x80U) {
    code &= first < 0xE0U ? 0x1FU : first < 0xF0U ? 0x0FU : 0x07U;
  }
  while (first >= 0x80U && at < text.size() && (byte(at) & 0xC0U) == 0x80U) {
    code = (code << 6U) | (byte(at++) & 0x3FU);
  }
  return code;
}

std::string escaped(std::uint32_t code) {
  switch (code) {
    case '\\':
      return "\\e";
    case '\'':
      return "\\(aq";
    case '`':
      return "\\(ga";
    case '^':
      return "\\(ha";
    case '~':
      return "\\(ti";
    default:
      break;
  }
  if (code < 0x80U) {
    return {static_cast<char>(code)};
  }
  std::array<char, 16> name{};
  std::snprintf(name.data(), name.size(), "\\[u%04X]", code);
  return name.data();
}

// A hyphen that begins a word, or another one behind it, begins an option.
bool is_typed_hyphen(std::string_view text, std::size_t at) {
  return at == 0 || text[at - 1] == ' ' || text[at - 1] == '(' || text[at - 1] == '-';
}

std::string converted(std::string_view text, bool all_typed) {
  std::string roff = text.starts_with('.') ? "\\&" : "";
  for (std::size_t at = 0; at < text.size();) {
    const std::size_t here = at;
    const std::uint32_t code = next_code_point(text, at);
    const bool typed = code == '-' && (all_typed || is_typed_hyphen(text, here));
    roff += typed ? "\\-" : escaped(code);
  }
  return roff;
}

}  // namespace

std::string roff_prose(std::string_view text) {
  return converted(text, false);
}

std::string roff_literal(std::string_view text) {
  return converted(text, true);
}

std::string roff_lines(std::string_view text) {
  std::string roff;
  for (std::size_t from = 0; from < text.size();) {
    const std::size_t to = std::min(text.find('\n', from), text.size());
    roff += roff_literal(text.substr(from, to - from)) + "\n";
    from = to + 1;
  }
  return roff;
}

}  // namespace fogline
