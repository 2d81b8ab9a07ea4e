#include "app/commands/option_values.h"

#include <algorithm>
#include <charconv>
#include <filesystem>

namespace fogline {
namespace {

template <typename Number>
std::optional<Number> whole_text_as(std::string_view text) {
  Number value{};
  const auto [end, error] = std::from_chars(text.data(), text.data() + text.size(), value);
  if (error != std::errc() || end != text.data() + text.size()) {
    return std::nullopt;
  }
  return value;
}

std::string joined(const std::vector<std::string_view>& words, std::string_view last) {
  std::string all;
  for (std::size_t i = 0; i < words.size(); ++i) {
    all += i == 0 ? "" : i + 1 == words.size() ? last : ", ";
    all += words[i];
  }
  return all;
}

}  // namespace

std::optional<double> number_from_text(std::string_view text) {
  return whole_text_as<double>(text);
}

std::optional<int> whole_number_from_text(std::string_view text) {
  return whole_text_as<int>(text);
}

std::vector<std::string> parts_of(const std::string& text, char separator) {
  std::vector<std::string> parts;
  std::size_t begin = 0;
  while (begin <= text.size()) {
    const std::size_t end = std::min(text.find(separator, begin), text.size());
    parts.push_back(text.substr(begin, end - begin));
    begin = end + 1;
  }
  return parts;
}

std::string choice_of(const std::vector<std::string_view>& words) {
  return joined(words, " or ");
}

std::string list_of(const std::vector<std::string_view>& words) {
  return joined(words, " and ");
}

bool same_file(const std::string& a, const std::string& b) {
  namespace fs = std::filesystem;
  std::error_code none;
  return fs::path(a).lexically_normal() == fs::path(b).lexically_normal() ||
         fs::equivalent(a, b, none);
}

std::optional<std::string> file_named_twice(const std::vector<std::string>& files) {
  for (std::size_t i = 0; i < files.size(); ++i) {
    for (std::size_t j = 0; j < i; ++j) {
      if (same_file(files[i], files[j])) {
        return files[i];
      }
    }
  }
  return std::nullopt;
}

}  // namespace fogline
