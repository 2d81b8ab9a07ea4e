#pragma once

#include <string>
#include <string_view>
#include <vector>

namespace fogline {

/// Builds text for a terminal: headings, wrapped paragraphs, list items.
class TextLayout {
 public:
  TextLayout(int width, bool color) : width_(static_cast<std::size_t>(width)), color_(color) {}

  void heading(std::string_view title);
  void paragraph(std::string_view text);
  /// A list item behind a sign of one column, such as "-" or "!".
  void item(char sign, std::string_view text);
  /// A line as it is, indented, dim where asked.
  void line(std::string_view text, bool dim = false);

  [[nodiscard]] std::size_t width() const { return width_; }
  [[nodiscard]] const std::string& text() const { return text_; }

 private:
  void wrap(std::string_view text, std::string_view first_indent, std::string_view indent);

  std::size_t width_;
  bool color_;
  std::string text_;
};

}  // namespace fogline
