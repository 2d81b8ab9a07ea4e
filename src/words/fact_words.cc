#include "words/fact_words.h"

#include "words/number_forms.h"

#include <algorithm>
#include <stdexcept>

namespace fogline {

namespace {

template <typename Value>
const Value* value_named(std::string_view name, std::span<const std::string_view> names,
                         const std::vector<Value>& values) {
  const auto place = std::find(names.begin(), names.end(), name);
  const auto index = static_cast<std::size_t>(place - names.begin());
  return place != names.end() && index < values.size() ? &values[index] : nullptr;
}

}  // namespace

std::string filled(std::string_view text, std::span<const std::string_view> number_names,
                   const std::vector<double>& numbers, std::span<const std::string_view> name_names,
                   const std::vector<std::string>& names) {
  std::string sentence;
  for (std::size_t at = 0; at < text.size();) {
    const std::size_t open = std::min(text.find('{', at), text.size());
    sentence += text.substr(at, open - at);
    if (open == text.size()) {
      break;
    }
    const std::size_t close = text.find('}', open);
    const std::string_view brace = text.substr(open + 1, close - open - 1);
    const std::size_t colon = std::min(brace.find(':'), brace.size());
    const std::string_view name = brace.substr(0, colon);
    if (const double* number = value_named(name, number_names, numbers)) {
      sentence += number_in_form(*number, brace.substr(std::min(colon + 1, brace.size())));
    } else if (const std::string* word = value_named(name, name_names, names)) {
      sentence += *word;
    } else {
      throw std::logic_error("nothing fills {" + std::string(brace) + "}");
    }
    at = close + 1;
  }
  return sentence;
}

}  // namespace fogline
