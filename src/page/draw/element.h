#pragma once

#include <string>
#include <string_view>

namespace fogline {

class Element;

/// A piece of a page: elements and text in their order. Nothing but an element and escaped text
/// makes one, so that it is well formed and holds no tag that a name or a sentence brought along.
class Markup {
 public:
  Markup() = default;

  /// Escapes `plain`. A no-break space (U+00A0) stays one.
  Markup& text(std::string_view plain);
  Markup& add(const Element& element);
  Markup& add(const Markup& more);

  [[nodiscard]] bool empty() const { return html_.empty(); }
  [[nodiscard]] const std::string& html() const { return html_; }

 private:
  std::string html_;
};

/// An element of HTML or SVG. Attributes and text are escaped when they are given; it closes itself
/// when it is added.
class Element {
 public:
  /// `name`: the element's name, such as "p".
  explicit Element(std::string_view name);

  /// An empty value of `class` or `id` leaves the attribute out.
  Element& set(std::string_view attribute, std::string_view value);
  /// A number as machines read it.
  Element& set(std::string_view attribute, double value, int decimals);
  Element& set(std::string_view attribute, int value);

  Element& text(std::string_view plain);
  Element& add(const Element& child);
  Element& add(const Markup& content);
  /// The page's own style sheet, the one text that isn't escaped: it never holds what was read.
  Element& style_sheet(std::string_view css);

  [[nodiscard]] std::string html() const;

 private:
  std::string name_;
  std::string attributes_;
  std::string style_;
  Markup content_;
};

}  // namespace fogline
