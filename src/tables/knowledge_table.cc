#include "tables/knowledge_table.h"

#include <fogline/base/refusal.h>

#include <cmath>
#include <utility>

namespace fogline {

namespace {

toml::table parsed(const CalibrationText& text_of, const std::string& name) {
  try {
    return toml::parse(text_of(name), name);
  } catch (const toml::parse_error& error) {
    throw FileError(name, Refusal::knowledge_no_toml,
                    {static_cast<double>(error.source().begin.line)});
  }
}

}  // namespace

KnowledgeTable KnowledgeTable::table(std::string_view key) const {
  const toml::node& node = take(key);
  if (!node.is_table()) {
    refuse(node, key, Refusal::knowledge_wants_table);
  }
  return {*file_, *node.as_table(), full_name(key)};
}

double KnowledgeTable::number(std::string_view key, NumberRange range) const {
  return number_of(take(key), key, range);
}

int KnowledgeTable::count(std::string_view key) const {
  constexpr double most = 1000.0;
  const double value = number(key, {0.0, most});
  if (value != std::floor(value)) {
    refuse(take(key), key, Refusal::knowledge_wants_whole_number);
  }
  return static_cast<int>(value);
}

std::vector<int> KnowledgeTable::counts(std::string_view key) const {
  constexpr NumberRange range{0.0, 1000.0};
  std::vector<int> counts;
  for (const double value : numbers(key, range)) {
    if (value != std::floor(value)) {
      refuse(take(key), key, Refusal::knowledge_wants_whole_number);
    }
    counts.push_back(static_cast<int>(value));
  }
  return counts;
}

std::vector<double> KnowledgeTable::numbers(std::string_view key, NumberRange range,
                                            std::size_t size) const {
  std::vector<double> values;
  for (const toml::node& element : list_of(take(key), key, size)) {
    values.push_back(number_of(element, key, range));
  }
  return values;
}

std::vector<std::vector<double>> KnowledgeTable::lists(std::string_view key, NumberRange range,
                                                       std::size_t size) const {
  std::vector<std::vector<double>> lists;
  for (const toml::node& element : list_of(take(key), key, 0)) {
    std::vector<double> values;
    for (const toml::node& value : list_of(element, key, size)) {
      values.push_back(number_of(value, key, range));
    }
    lists.push_back(std::move(values));
  }
  return lists;
}

const toml::node& KnowledgeTable::take(std::string_view key) const {
  const toml::node* node = table_->get(key);
  if (node == nullptr) {
    file_->refuse(table_->source(), full_name(key), Refusal::knowledge_key_missing);
  }
  file_->asked_.insert(node);
  return *node;
}

double KnowledgeTable::number_of(const toml::node& node, std::string_view key,
                                 NumberRange range) const {
  const auto value = node.is_number() ? node.value<double>() : std::nullopt;
  if (!value) {
    refuse(node, key, Refusal::knowledge_wants_number);
  }
  if (!(*value >= range.least && *value <= range.most)) {
    refuse(node, key, Refusal::knowledge_out_of_range, {range.least, range.most});
  }
  return *value;
}

const toml::array& KnowledgeTable::list_of(const toml::node& node, std::string_view key,
                                           std::size_t size) const {
  const toml::array* array = node.as_array();
  if (array == nullptr || array->empty()) {
    refuse(node, key, Refusal::knowledge_wants_list);
  }
  if (size != 0 && array->size() != size) {
    refuse(node, key, Refusal::knowledge_wants_values, {static_cast<double>(size)});
  }
  return *array;
}

std::string KnowledgeTable::full_name(std::string_view key) const {
  return name_.empty() ? std::string(key) : name_ + "." + std::string(key);
}

void KnowledgeTable::refuse(const toml::node& node, std::string_view key, Refusal why,
                            const std::vector<double>& numbers) const {
  file_->refuse(node.source(), full_name(key), why, numbers);
}

KnowledgeFile::KnowledgeFile(const CalibrationText& text_of, std::string name)
    : name_(std::move(name)), whole_(parsed(text_of, name_)) {}

void KnowledgeFile::refuse_rest() const {
  refuse_rest_of(whole_, "");
}

// As deep as the shipped tables are nested.
// NOLINTNEXTLINE(misc-no-recursion)
void KnowledgeFile::refuse_rest_of(const toml::table& table, const std::string& name) const {
  constexpr std::string_view source = "source";
  bool holds_values = false;
  for (const auto& [key, node] : table) {
    if (key == source) {
      continue;
    }
    const std::string full = (name.empty() ? "" : name + ".") + std::string(key.str());
    if (asked_.find(&node) == asked_.end()) {
      refuse(key.source(), full, Refusal::knowledge_key_unknown);
    }
    // An inline table is a value; a headed one answers for its own source.
    const toml::table* inner = node.as_table();
    holds_values = holds_values || inner == nullptr || inner->is_inline();
    if (inner != nullptr) {
      refuse_rest_of(*inner, full);
    }
  }
  if (holds_values && !table.is_inline() && table[source].value_or(std::string_view()).empty()) {
    refuse(table.source(), name, Refusal::knowledge_without_source);
  }
}

void KnowledgeFile::refuse(const toml::source_region& at, const std::string& key, Refusal why,
                           const std::vector<double>& numbers) const {
  std::vector<double> all{static_cast<double>(at.begin.line)};
  all.insert(all.end(), numbers.begin(), numbers.end());
  throw FileError(name_, why, std::move(all), {key});
}

}  // namespace fogline
