#pragma once

#include <algorithm>
#include <cctype>
#include <sstream>
#include <string>
#include <vector>

namespace fogline {

inline std::vector<std::string> lines_of(const std::string& text) {
  std::vector<std::string> lines;
  std::istringstream stream(text);
  for (std::string line; std::getline(stream, line);) {
    lines.push_back(line);
  }
  return lines;
}

inline long columns_of(const std::string& line) {
  return std::count_if(line.begin(), line.end(), [](char c) { return (c & 0xC0) != 0x80; });
}

/// A text without its line breaks and indents.
inline std::string unwrapped(const std::string& text) {
  std::istringstream stream(text);
  std::string joined;
  for (std::string word; stream >> word;) {
    joined += joined.empty() ? "" : " ";
    joined += word;
  }
  return joined;
}

/// Sentences of five words and more that a text tells twice.
inline std::vector<std::string> told_twice(const std::string& text) {
  const std::string all = unwrapped(text);
  std::vector<std::string> sentences;
  std::size_t from = 0;
  while (from < all.size()) {
    std::size_t end = all.find(". ", from);
    end = end == std::string::npos ? all.size() : end + 1;
    const std::string sentence = all.substr(from, end - from);
    if (std::count(sentence.begin(), sentence.end(), ' ') >= 4) {
      sentences.push_back(sentence);
    }
    from = end + 1;
  }
  std::vector<std::string> twice;
  for (const std::string& sentence : sentences) {
    if (all.find(sentence) != all.rfind(sentence)) {
      twice.push_back(sentence);
    }
  }
  return twice;
}

}  // namespace fogline
