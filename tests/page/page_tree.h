#pragma once

#include <cctype>
#include <cstddef>
#include <map>
#include <sstream>
#include <stdexcept>
#include <string>
#include <string_view>
#include <vector>

// A parser that takes only well-formed pages: every element closed in its order, every attribute
// quoted and given once, every sign escaped that must be.

namespace fogline::page_tree {

struct Node {
  std::string name;
  std::map<std::string, std::string> attributes;
  /// All text below, unescaped.
  std::string text;
  std::vector<Node> children;

  [[nodiscard]] std::string attribute(const std::string& key) const {
    const auto found = attributes.find(key);
    return found == attributes.end() ? "" : found->second;
  }

  /// Every element below with this name, in their order; all where the name is empty.
  [[nodiscard]] std::vector<const Node*> all(std::string_view wanted = "") const {
    std::vector<const Node*> found;
    for (const Node& child : children) {
      if (wanted.empty() || child.name == wanted) {
        found.push_back(&child);
      }
      for (const Node* below : child.all(wanted)) {
        found.push_back(below);
      }
    }
    return found;
  }

  /// Those of them whose class has this word.
  [[nodiscard]] std::vector<const Node*> of_class(std::string_view wanted) const {
    std::vector<const Node*> found;
    for (const Node* node : all()) {
      std::istringstream classes(node->attribute("class"));
      for (std::string one; classes >> one;) {
        if (one == wanted) {
          found.push_back(node);
        }
      }
    }
    return found;
  }
};

class Parser {
 public:
  explicit Parser(std::string_view page) : page_(page) {}

  Node root() {
    expect("<!DOCTYPE html>\n");
    Node node = element();
    if (page_.substr(at_).find_first_not_of('\n') != std::string_view::npos) {
      fail("something follows the page");
    }
    return node;
  }

 private:
  [[noreturn]] void fail(const std::string& what) const {
    throw std::runtime_error(what + " at " + std::string(page_.substr(at_, 60)));
  }

  void expect(std::string_view text) {
    if (!page_.substr(at_).starts_with(text)) {
      fail("no " + std::string(text));
    }
    at_ += text.size();
  }

  std::string name() {
    const std::size_t begin = at_;
    while (at_ < page_.size() && (std::isalnum(static_cast<unsigned char>(page_[at_])) != 0 ||
                                  page_[at_] == '-' || page_[at_] == '_')) {
      ++at_;
    }
    if (begin == at_) {
      fail("no name");
    }
    return std::string(page_.substr(begin, at_ - begin));
  }

  std::string unescaped(std::string_view raw) const {
    static const std::map<std::string_view, std::string_view> signs{
        {"amp", "&"}, {"lt", "<"}, {"gt", ">"}, {"quot", "\""}, {"#39", "'"}, {"nbsp", " "}};
    std::string text;
    for (std::size_t i = 0; i < raw.size(); ++i) {
      if (raw[i] == '<' || raw[i] == '>') {
        fail("a bare sign");
      }
      if (raw[i] != '&') {
        text += raw[i];
        continue;
      }
      const std::size_t end = raw.find(';', i);
      const auto sign = signs.find(raw.substr(i + 1, end - i - 1));
      if (end == std::string_view::npos || sign == signs.end()) {
        fail("a bare ampersand");
      }
      text += sign->second;
      i = end;
    }
    return text;
  }

  void attributes(Node& node) {
    while (page_[at_] == ' ') {
      ++at_;
      const std::string key = name();
      expect("=\"");
      const std::size_t end = page_.find('"', at_);
      if (!node.attributes.emplace(key, unescaped(page_.substr(at_, end - at_))).second) {
        fail("an attribute given twice: " + key);
      }
      at_ = end + 1;
    }
  }

  Node element() {
    expect("<");
    Node node;
    node.name = name();
    attributes(node);
    if (page_[at_] == '/') {
      expect("/>");
      return node;
    }
    expect(">");
    if (node.name == "meta" || node.name == "br") {
      return node;
    }
    if (node.name == "style") {
      at_ = page_.find("</style>", at_);
    }
    const std::string closing = "</" + node.name + ">";
    while (!page_.substr(at_).starts_with(closing)) {
      if (page_.substr(at_).starts_with("</") || at_ >= page_.size()) {
        fail("not closed: " + node.name);
      }
      if (page_[at_] == '<') {
        node.children.push_back(element());
        node.text += node.children.back().text;
      } else {
        const std::size_t end = page_.find('<', at_);
        node.text += unescaped(page_.substr(at_, end - at_));
        at_ = end;
      }
    }
    expect(closing);
    return node;
  }

  std::string_view page_;
  std::size_t at_ = 0;
};

/// Throws where the page isn't well formed.
inline Node parsed(std::string_view page) {
  return Parser(page).root();
}

/// A drawing or piece of one, wrapped so that it can be parsed.
inline Node parsed_piece(const std::string& html) {
  return parsed("<!DOCTYPE html>\n<div>" + html + "</div>");
}

/// "12.50%" or "12" as a number.
inline double number_of(const Node& node, const std::string& attribute) {
  return std::stod(node.attribute(attribute));
}

}  // namespace fogline::page_tree
