#include "page/draw/escape.h"

namespace fogline {

namespace {

// As an entity, so that it is seen in the page's source.
constexpr std::string_view no_break_space = "\u00A0";

}  // namespace

std::string html_escaped(std::string_view text) {
  std::string escaped;
  escaped.reserve(text.size());
  for (std::size_t i = 0; i < text.size(); ++i) {
    const char c = text[i];
    if (text.substr(i).starts_with(no_break_space)) {
      escaped += "&nbsp;";
      i += no_break_space.size() - 1;
      continue;
    }
    switch (c) {
      case '&':
        escaped += "&amp;";
        break;
      case '<':
        escaped += "&lt;";
        break;
      case '>':
        escaped += "&gt;";
        break;
      case '"':
        escaped += "&quot;";
        break;
      case '\'':
        escaped += "&#39;";
        break;
      default:
        escaped += c;
    }
  }
  return escaped;
}

std::string base64_from_bytes(const std::vector<std::uint8_t>& bytes) {
  constexpr std::string_view digits =
      "ABCDEFGHIJKLMNOPQRSTUVWXYZabcdefghijklmnopqrstuvwxyz0123456789+/";
  std::string text;
  text.reserve((bytes.size() + 2) / 3 * 4);
  for (std::size_t i = 0; i < bytes.size(); i += 3) {
    const std::size_t here = bytes.size() - i < 3 ? bytes.size() - i : 3;
    std::uint32_t group = static_cast<std::uint32_t>(bytes[i]) << 16U;
    if (here > 1) {
      group |= static_cast<std::uint32_t>(bytes[i + 1]) << 8U;
    }
    if (here > 2) {
      group |= bytes[i + 2];
    }
    text += digits[group >> 18U & 63U];
    text += digits[group >> 12U & 63U];
    text += here > 1 ? digits[group >> 6U & 63U] : '=';
    text += here > 2 ? digits[group & 63U] : '=';
  }
  return text;
}

}  // namespace fogline
