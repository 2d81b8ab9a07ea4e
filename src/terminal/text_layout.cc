#include "terminal/text_layout.h"

#include "words/columns.h"

#include <algorithm>

namespace fogline {
namespace {

constexpr std::string_view bold = "\x1b[1m";
constexpr std::string_view dim_code = "\x1b[2m";
constexpr std::string_view plain = "\x1b[0m";

// Where the word that begins at `from` ends: at a blank that isn't beside a "±" or before a unit,
// so that a value keeps its doubt and its unit on its line.
std::size_t word_end(std::string_view text, std::size_t from) {
  constexpr std::string_view sign = "±";
  std::size_t to = text.find(' ', from);
  while (to != std::string_view::npos &&
         (text.substr(to + 1).starts_with(sign) || text.substr(0, to).ends_with(sign) ||
          text.substr(to + 1).starts_with('%') || text.substr(to + 1).starts_with("°C"))) {
    to = text.find(' ', to + 1);
  }
  return std::min(to, text.size());
}

}  // namespace

void TextLayout::heading(std::string_view title) {
  if (!text_.empty()) {
    text_ += '\n';
  }
  text_ +=
      color_ ? std::string(bold) + std::string(title) + std::string(plain) : std::string(title);
  text_ += '\n';
}

void TextLayout::paragraph(std::string_view text) {
  wrap(text, "  ", "  ");
}

void TextLayout::item(char sign, std::string_view text) {
  const std::string first{' ', ' ', sign, ' '};
  wrap(text, first, "    ");
}

void TextLayout::line(std::string_view text, bool dim) {
  text_ += "  ";
  text_ += dim && color_ ? std::string(dim_code) + std::string(text) + std::string(plain)
                         : std::string(text);
  text_ += '\n';
}

void TextLayout::wrap(std::string_view text, std::string_view first_indent,
                      std::string_view indent) {
  const std::string safe = printable(text);
  std::string line(first_indent);
  bool line_is_empty = true;
  std::size_t from = 0;
  while (from <= safe.size()) {
    const std::size_t to = word_end(safe, from);
    const std::string word = safe.substr(from, to - from);
    if (!line_is_empty && columns(line) + 1 + columns(word) > width_) {
      text_ += line + '\n';
      line = indent;
      line_is_empty = true;
    }
    line += (line_is_empty ? "" : " ") + word;
    line_is_empty = false;
    from = to + 1;
  }
  text_ += line + '\n';
}

}  // namespace fogline
