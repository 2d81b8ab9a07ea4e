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

std::string lower(std::string_view text) {
  std::string small(text);
  std::transform(small.begin(), small.end(), small.begin(),
                 [](char c) { return c >= 'A' && c <= 'Z' ? static_cast<char>(c + 32) : c; });
  return small;
}

/// So much room a column needs for words that break.
constexpr std::size_t least_column = 24;

}  // namespace

void Told::add(std::string_view text) {
  text_ += lower(text) + '\n';
}

bool Told::has(std::string_view sentence) const {
  if (sentence.ends_with('.')) {
    sentence.remove_suffix(1);
  }
  return !sentence.empty() && text_.find(lower(sentence)) != std::string::npos;
}

void TextLayout::heading(std::string_view title) {
  pending_heading_ = title;
}

void TextLayout::put_heading() {
  if (pending_heading_.empty()) {
    return;
  }
  text_ += text_.empty() ? "" : "\n";
  text_ += color_ ? std::string(bold) + pending_heading_ + std::string(plain) : pending_heading_;
  text_ += '\n';
  pending_heading_.clear();
}

void TextLayout::paragraph(std::string_view text) {
  wrap(text, "  ", "  ");
}

void TextLayout::item(char sign, std::string_view text) {
  const std::string first{' ', ' ', sign, ' '};
  wrap(text, first, "    ");
}

void TextLayout::paragraph_once(std::string_view text) {
  if (!text.empty() && !has_told(text)) {
    paragraph(text);
  }
}

void TextLayout::item_once(char sign, std::string_view text) {
  if (!text.empty() && !has_told(text)) {
    item(sign, text);
  }
}

void TextLayout::line(std::string_view text, bool dim) {
  put_heading();
  const std::string_view shown = text.substr(0, text.find_last_not_of(' ') + 1);
  text_ += "  ";
  text_ += dim && color_ ? std::string(dim_code) + std::string(shown) + std::string(plain)
                         : std::string(shown);
  text_ += '\n';
}

void TextLayout::row(std::string_view head, std::string_view text) {
  const std::size_t indent = columns(head) + 2;
  if (indent + std::min(least_column, columns(text)) > width_) {
    std::string joined(head.substr(0, head.find_last_not_of(' ') + 1));
    item('-', joined.append(text.empty() ? "" : ", ").append(text));
  } else if (text.empty()) {
    line(head);
  } else {
    wrap(text, "  " + std::string(head), std::string(indent, ' '));
  }
}

void TextLayout::block(std::string_view lines) {
  put_heading();
  text_ += lines;
}

void TextLayout::wrap(std::string_view text, std::string_view first_indent,
                      std::string_view indent) {
  put_heading();
  told_.add(text);
  const std::string safe = printable(text.substr(0, text.find_last_not_of(' ') + 1));
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

void put_columns(TextLayout& layout, const std::vector<std::vector<std::string>>& rows) {
  std::vector<std::size_t> widths;
  for (const std::vector<std::string>& row : rows) {
    widths.resize(std::max(widths.size(), row.size()), 0);
    for (std::size_t i = 0; i < row.size(); ++i) {
      widths[i] = std::max(widths[i], columns(row[i]));
    }
  }
  bool is_head = true;
  for (const std::vector<std::string>& row : rows) {
    std::string line;
    for (std::size_t i = 0; i < row.size(); ++i) {
      line += padded(row[i], widths[i]) + "  ";
    }
    layout.line(line, is_head);
    is_head = false;
  }
}

}  // namespace fogline
