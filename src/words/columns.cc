#include "words/columns.h"

#include <algorithm>

namespace fogline {

std::size_t columns(std::string_view text) {
  return static_cast<std::size_t>(std::count_if(text.begin(), text.end(), [](char c) {
    return (static_cast<unsigned char>(c) & 0xC0U) != 0x80U;  // not a continuation byte
  }));
}

std::string padded(std::string text, std::size_t width) {
  const std::size_t used = columns(text);
  text.append(used < width ? width - used : 0, ' ');
  return text;
}

std::string printable(std::string_view text) {
  std::string safe;
  safe.reserve(text.size());
  for (std::size_t i = 0; i < text.size(); ++i) {
    const auto code = static_cast<unsigned char>(text[i]);
    const auto next = static_cast<unsigned char>(i + 1 < text.size() ? text[i + 1] : 0);
    if (code < 0x20 || code == 0x7F) {
      safe += '?';
    } else if (code == 0xC2 && next >= 0x80 && next <= 0x9F) {  // a control character of two bytes
      safe += '?';
      ++i;
    } else {
      safe += text[i];
    }
  }
  return safe;
}

}  // namespace fogline
