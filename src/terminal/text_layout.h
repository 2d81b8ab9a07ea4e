#pragma once

#include <cstddef>
#include <string>
#include <string_view>
#include <vector>

namespace fogline {

/// What a text has told, so that it says nothing twice.
class Told {
 public:
  void add(std::string_view text);
  /// Whether the sentence stands in what was told, whatever the size of its letters.
  [[nodiscard]] bool has(std::string_view sentence) const;

 private:
  std::string text_;
};

/// Builds text for a terminal: headings, wrapped paragraphs, list items.
class TextLayout {
 public:
  TextLayout(int width, bool color) : width_(static_cast<std::size_t>(width)), color_(color) {}

  /// Stands as soon as something follows it; a heading of nothing isn't printed.
  void heading(std::string_view title);
  void paragraph(std::string_view text);
  /// A list item behind a sign of one column, such as "-" or "!".
  void item(char sign, std::string_view text);
  /// The same, unless it was told already.
  void paragraph_once(std::string_view text);
  void item_once(char sign, std::string_view text);
  /// A line as it is, indented, dim where asked.
  void line(std::string_view text, bool dim = false);
  /// Text that breaks into its own column, right of `head`; an item where that leaves little room.
  void row(std::string_view head, std::string_view text);

  /// Lines that were laid out elsewhere.
  void block(std::string_view lines);

  [[nodiscard]] bool has_told(std::string_view sentence) const { return told_.has(sentence); }
  [[nodiscard]] std::size_t width() const { return width_; }
  [[nodiscard]] const std::string& text() const { return text_; }

 private:
  void wrap(std::string_view text, std::string_view first_indent, std::string_view indent);
  void put_heading();

  std::size_t width_;
  bool color_;
  std::string pending_heading_;
  std::string text_;
  Told told_;
};

/// Rows of cells in columns as wide as their widest cell, the first row as their head.
void put_columns(TextLayout& layout, const std::vector<std::vector<std::string>>& rows);

}  // namespace fogline
