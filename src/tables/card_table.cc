#include "tables/card_table.h"

#include <fogline/base/refusal.h>

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

std::string CardTable::listed(const std::vector<std::string_view>& words) {
  std::string text;
  for (const std::string_view word : words) {
    text += (text.empty() ? "\"" : ", \"") + std::string(word) + "\"";
  }
  return text;
}

void CardTable::refuse_at(const toml::source_region& place, std::string_view key, Refusal why,
                          const std::string& other) const {
  std::vector<std::string> names{full_name(key)};
  if (!other.empty()) {
    names.push_back(other);
  }
  throw FileError(file_, why, {static_cast<double>(place.begin.line)}, std::move(names));
}

void CardTable::refuse(const toml::node& node, std::string_view key, Refusal why,
                       const std::string& other) const {
  refuse_at(node.source(), key, why, other);
}

void CardTable::refuse_missing(std::string_view key, Refusal why, const std::string& other) const {
  refuse_at(table_.source(), key, why, other);
}

void CardTable::complain(std::string_view key, Refusal why, const std::string& other) const {
  refuse_at(table_.get(key)->source(), key, why, other);
}

void CardTable::refuse_others() const {
  for (const auto& [key, node] : table_) {
    if (asked_.find(key.str()) == asked_.end()) {
      refuse_at(key.source(), key.str(), Refusal::card_key_unknown, "");
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
    refuse(*node, key, Refusal::card_wants_table);
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
    refuse(*node, key, Refusal::card_wants_tables);
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
    refuse(*node, key, Refusal::card_wants_text);
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
    refuse(*node, key, Refusal::card_wants_date);
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
    refuse(*node, key, Refusal::card_wants_minutes);
  }
  return seconds;
}

std::optional<double> CardTable::number(std::string_view key, double least, double most,
                                        Refusal otherwise) {
  const toml::node* node = take(key);
  if (node == nullptr) {
    return std::nullopt;
  }
  const auto value = node->is_number() ? node->value<double>() : std::nullopt;
  if (!value || !within(*value, least, most)) {
    refuse(*node, key, otherwise);
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
    refuse(*node, key, Refusal::card_wants_count);
  }
  return static_cast<int>(*value);
}

std::vector<double> CardTable::numbers(std::string_view key, double least, double most,
                                       std::size_t fewest, Refusal otherwise) {
  const toml::node* node = take(key);
  if (node == nullptr) {
    return {};
  }
  std::vector<double> values;
  const toml::array* array = node->as_array();
  if (array == nullptr || array->size() < fewest) {
    refuse(*node, key, otherwise);
  }
  for (const toml::node& element : *array) {
    const auto value = element.is_number() ? element.value<double>() : std::nullopt;
    if (!value || !within(*value, least, most)) {
      refuse(element, key, otherwise);
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
  const Refusal otherwise = Refusal::card_wants_shutter_times;
  const toml::array* array = node->as_array();
  if (array == nullptr || array->size() < 2) {
    refuse(*node, key, otherwise);
  }
  std::vector<double> times;
  for (const toml::node& element : *array) {
    const auto time = shutter_time_of(element);
    if (!time) {
      refuse(element, key, otherwise);
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
    refuse(*node, key, Refusal::card_wants_shutter_time);
  }
  return time;
}

}  // namespace fogline
