#include "page/draw/element.h"

#include "page/draw/escape.h"
#include "words/number_text.h"

#include <algorithm>
#include <array>

namespace fogline {
namespace {

// Of HTML: they hold nothing and are never closed.
constexpr std::array<std::string_view, 2> void_names{"meta", "br"};

// Of SVG: closed in their own tag where they hold nothing. In HTML only these may be.
constexpr std::array<std::string_view, 6> shape_names{"line", "rect", "circle",
                                                      "path", "use",  "image"};

// A line of the page's source ends behind these; blanks between them show nowhere.
constexpr std::array<std::string_view, 22> line_names{
    "head", "meta", "title", "style", "main",  "header", "footer", "section",
    "h1",   "h2",   "h3",    "p",     "ul",    "ol",     "li",     "dl",
    "div",  "tr",   "table", "thead", "tbody", "figure",
};

template <std::size_t count>
bool is_one_of(const std::array<std::string_view, count>& names, std::string_view name) {
  return std::find(names.begin(), names.end(), name) != names.end();
}

}  // namespace

Markup& Markup::text(std::string_view plain) {
  html_ += html_escaped(plain);
  return *this;
}

Markup& Markup::add(const Element& element) {
  html_ += element.html();
  return *this;
}

Markup& Markup::add(const Markup& more) {
  html_ += more.html_;
  return *this;
}

Element::Element(std::string_view name) : name_(name) {}

Element& Element::set(std::string_view attribute, std::string_view value) {
  if (value.empty() && (attribute == "class" || attribute == "id")) {
    return *this;
  }
  attributes_.append(" ").append(attribute).append("=\"").append(html_escaped(value));
  attributes_ += '"';
  return *this;
}

Element& Element::set(std::string_view attribute, double value, int decimals) {
  return set(attribute, machine_number(value, decimals));
}

Element& Element::set(std::string_view attribute, int value) {
  return set(attribute, std::to_string(value));
}

Element& Element::text(std::string_view plain) {
  content_.text(plain);
  return *this;
}

Element& Element::add(const Element& child) {
  content_.add(child);
  return *this;
}

Element& Element::add(const Markup& content) {
  content_.add(content);
  return *this;
}

Element& Element::style_sheet(std::string_view css) {
  style_ = css;
  return *this;
}

std::string Element::html() const {
  std::string html = "<" + name_ + attributes_;
  if (is_one_of(void_names, name_)) {
    html += ">";
  } else if (content_.empty() && is_one_of(shape_names, name_)) {
    html += "/>";
  } else {
    html.append(">").append(style_).append(content_.html());
    html.append("</").append(name_).append(">");
  }
  html += is_one_of(line_names, name_) || is_one_of(shape_names, name_) ? "\n" : "";
  return html;
}

}  // namespace fogline
