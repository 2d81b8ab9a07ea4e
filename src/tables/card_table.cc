#include "tables/card_table.h"

#include <fogline/base/error.h>

#include <charconv>
#include <chrono>
#include <cmath>
#include <cstdio>

namespace fogline {
namespace {

constexpr double seconds_a_minute = 60.0;
/// Stand development overnight is the longest that anybody times.
constexpr int longest_min = 24 * 60;
constexpr int most_counted = 100000;

const toml::table nothing;

/// Digits only, as a number; nothing for anything else.
std::optional<int> whole_number(std::string_view digits) {
  int value = 0;
  const char* end = digits.data() + digits.size();
  const auto result = std::from_chars(digits.data(), end, value);
  const bool plain = !digits.empty() && digits.front() >= '0' && digits.front() <= '9';
  return plain && result.ec == std::errc() && result.ptr == end ? std::optional(value)
                                                                : std::nullopt;
}

std::optional<double> seconds_of(std::string_view text) {
  const std::size_t colon = text.find(':');
  if (colon == std::string_view::npos || text.size() != colon + 3) {
    return std::nullopt;
  }
  const auto minutes = whole_number(text.substr(0, colon));
  const auto seconds = whole_number(text.substr(colon + 1));
  if (!minutes || !seconds || *minutes > longest_min || *seconds >= seconds_a_minute) {
    return std::nullopt;
  }
  const double in_all = seconds_a_minute * *minutes + *seconds;
  return in_all > 0.0 ? std::optional(in_all) : std::nullopt;
}

bool is_day(int year, unsigned month, unsigned day) {
  return std::chrono::year_month_day(std::chrono::year(year), std::chrono::month(month),
                                     std::chrono::day(day))
      .ok();
}

std::optional<std::string> day_of(std::string_view text) {
  constexpr std::size_t length = 10;
  if (text.size() != length || text[4] != '-' || text[7] != '-') {
    return std::nullopt;
  }
  const auto year = whole_number(text.substr(0, 4));
  const auto month = whole_number(text.substr(5, 2));
  const auto day = whole_number(text.substr(8, 2));
  if (!year || !month || !day ||
      !is_day(*year, static_cast<unsigned>(*month), static_cast<unsigned>(*day))) {
    return std::nullopt;
  }
  return std::string(text);
}

std::string day_text(const toml::date& date) {
  char text[32];
  std::snprintf(text, sizeof text, "%04d-%02d-%02d", static_cast<int>(date.year),
                static_cast<int>(date.month), static_cast<int>(date.day));
  return text;
}

bool within(double value, double least, double most) {
  return std::isfinite(value) && value >= least && value <= most;
}

/// "1/60", "2", "0.5" or a plain number, above 0 and up to an hour.
std::optional<double> shutter_time_of(const toml::node& node) {
  constexpr double longest_s = 3600.0;
  double seconds = 0.0;
  if (const auto written = node.value_exact<std::string>()) {
    const std::size_t stroke = written->find('/');
    const auto number = [](const std::string& text) {
      double value = 0.0;
      const char* const end = text.data() + text.size();
      const auto result = std::from_chars(text.data(), end, value);
      return result.ec == std::errc() && result.ptr == end ? value : std::nan("");
    };
    seconds = stroke == std::string::npos
                  ? number(*written)
                  : number(written->substr(0, stroke)) / number(written->substr(stroke + 1));
  } else if (node.is_number()) {
    seconds = node.value<double>().value_or(0.0);
  }
  return within(seconds, std::numeric_limits<double>::min(), longest_s) ? std::optional(seconds)
                                                                        : std::nullopt;
}

}  // namespace

CardTable::CardTable(const toml::table& table, std::string file, std::string name)
    : table_(table), file_(std::move(file)), name_(std::move(name)) {}

std::string CardTable::full_name(std::string_view key) const {
  return name_.empty() ? std::string(key) : name_ + "." + std::string(key);
}

std::string CardTable::place(const toml::node& node) const {
  return file_ + ":" + std::to_string(node.source().begin.line) + ": ";
}

std::string CardTable::listed(const std::vector<std::string_view>& words) {
  std::string text = "one of ";
  for (std::size_t i = 0; i < words.size(); ++i) {
    text += (i == 0 ? "\"" : ", \"") + std::string(words[i]) + "\"";
  }
  return text;
}

void CardTable::refuse(const toml::node& node, std::string_view key,
                       const std::string& expected) const {
  throw FileError(file_, place(node) + full_name(key) + " must be " + expected);
}

void CardTable::refuse_missing(std::string_view key, const std::string& expected) const {
  const std::string where = name_.empty() ? file_ + ": " : place(table_);
  throw FileError(file_, where + full_name(key) + " is missing: it must be " + expected);
}

void CardTable::complain(std::string_view key, const std::string& about) const {
  throw FileError(file_, place(*table_.get(key)) + full_name(key) + " " + about);
}

void CardTable::refuse_others() const {
  for (const auto& [key, node] : table_) {
    if (asked_.find(key.str()) == asked_.end()) {
      throw FileError(file_, file_ + ":" + std::to_string(key.source().begin.line) + ": " +
                                 full_name(key.str()) +
                                 " is no key of a roll card: correct or remove it");
    }
  }
}

const toml::node* CardTable::take(std::string_view key) {
  asked_.emplace(key);
  return table_.get(key);
}

bool CardTable::has(std::string_view key) const {
  return table_.contains(key);
}

CardTable CardTable::table(std::string_view key) {
  const toml::node* node = take(key);
  if (node == nullptr) {
    return {nothing, file_, full_name(key)};
  }
  if (!node->is_table()) {
    refuse(*node, key, "a table of its own, headed [" + full_name(key) + "]");
  }
  return {*node->as_table(), file_, full_name(key)};
}

std::vector<CardTable> CardTable::tables(std::string_view key) {
  const toml::node* node = take(key);
  if (node == nullptr) {
    return {};
  }
  const toml::array* array = node->as_array();
  std::vector<CardTable> found;
  if (array != nullptr) {
    for (const toml::node& element : *array) {
      if (element.is_table()) {
        found.emplace_back(*element.as_table(), file_, full_name(key));
      }
    }
  }
  if (array == nullptr || found.size() != array->size()) {
    refuse(*node, key, "tables of their own, headed [[" + full_name(key) + "]]");
  }
  return found;
}

std::optional<std::string> CardTable::text(std::string_view key) {
  const toml::node* node = take(key);
  if (node == nullptr) {
    return std::nullopt;
  }
  const auto found = node->value_exact<std::string>();
  if (!found || found->empty()) {
    refuse(*node, key, "a text in quotes");
  }
  return found;
}

std::optional<std::string> CardTable::date(std::string_view key) {
  const toml::node* node = take(key);
  if (node == nullptr) {
    return std::nullopt;
  }
  std::optional<std::string> day;
  if (const auto date = node->value_exact<toml::date>()) {
    day = day_text(*date);
  } else if (const auto written = node->value_exact<std::string>()) {
    day = day_of(*written);
  }
  if (!day) {
    refuse(*node, key, "a date such as 2026-05-31");
  }
  return day;
}

std::optional<double> CardTable::time_s(std::string_view key) {
  const toml::node* node = take(key);
  if (node == nullptr) {
    return std::nullopt;
  }
  const auto written = node->value_exact<std::string>();
  const auto seconds = written ? seconds_of(*written) : std::nullopt;
  if (!seconds) {
    refuse(*node, key, "minutes and seconds such as \"9:30\"");
  }
  return seconds;
}

std::optional<double> CardTable::number(std::string_view key, double least, double most,
                                        const std::string& expected) {
  const toml::node* node = take(key);
  if (node == nullptr) {
    return std::nullopt;
  }
  const auto value = node->is_number() ? node->value<double>() : std::nullopt;
  if (!value || !within(*value, least, most)) {
    refuse(*node, key, expected);
  }
  return value;
}

std::optional<int> CardTable::count(std::string_view key) {
  const toml::node* node = take(key);
  if (node == nullptr) {
    return std::nullopt;
  }
  const auto value = node->value_exact<std::int64_t>();
  if (!value || *value < 0 || *value > most_counted) {
    refuse(*node, key, "a whole number, 0 or more");
  }
  return static_cast<int>(*value);
}

std::vector<double> CardTable::numbers(std::string_view key, double least, double most,
                                       std::size_t fewest, const std::string& expected) {
  const toml::node* node = take(key);
  if (node == nullptr) {
    return {};
  }
  std::vector<double> values;
  const toml::array* array = node->as_array();
  if (array == nullptr || array->size() < fewest) {
    refuse(*node, key, expected);
  }
  for (const toml::node& element : *array) {
    const auto value = element.is_number() ? element.value<double>() : std::nullopt;
    if (!value || !within(*value, least, most)) {
      refuse(element, key, expected);
    }
    values.push_back(*value);
  }
  return values;
}

std::vector<double> CardTable::shutter_times_s(std::string_view key) {
  const toml::node* node = take(key);
  if (node == nullptr) {
    return {};
  }
  const char* const expected = "a list of two or more times, such as [\"1/60\", \"1/8\", \"2\"]";
  const toml::array* array = node->as_array();
  if (array == nullptr || array->size() < 2) {
    refuse(*node, key, expected);
  }
  std::vector<double> times;
  for (const toml::node& element : *array) {
    const auto time = shutter_time_of(element);
    if (!time) {
      refuse(element, key, expected);
    }
    times.push_back(*time);
  }
  return times;
}

std::optional<double> CardTable::shutter_time_s(std::string_view key) {
  const toml::node* node = take(key);
  if (node == nullptr) {
    return std::nullopt;
  }
  const auto time = shutter_time_of(*node);
  if (!time) {
    refuse(*node, key, "a time such as \"1/60\" or \"2\"");
  }
  return time;
}

}  // namespace fogline
