#pragma once

#include "record/json_values.h"

#include <fogline/base/fact.h>

#include <string>
#include <string_view>
#include <utility>
#include <vector>

namespace fogline {

/// A fact of any enumeration by what it is called and what comes with it.
struct FactParts {
  std::string_view code;
  std::vector<std::pair<std::string_view, double>> numbers;
  std::vector<std::pair<std::string_view, std::string>> names;
};

template <typename Kind>
FactParts parts_of(const Fact<Kind>& fact) {
  const FactRow<Kind>& row = fact_row(fact.kind);
  FactParts parts{row.code, {}, {}};
  for (std::size_t i = 0; i < fact.numbers.size() && i < row.numbers.size(); ++i) {
    parts.numbers.emplace_back(row.numbers[i], fact.numbers[i]);
  }
  for (std::size_t i = 0; i < fact.names.size() && i < row.names.size(); ++i) {
    parts.names.emplace_back(row.names[i], fact.names[i]);
  }
  return parts;
}

template <typename Kind>
std::vector<FactParts> parts_of(const std::vector<Fact<Kind>>& facts) {
  std::vector<FactParts> parts;
  parts.reserve(facts.size());
  for (const Fact<Kind>& fact : facts) {
    parts.push_back(parts_of(fact));
  }
  return parts;
}

/// `code`, and `numbers` and `names` where it has any; numbers that aren't finite are left out.
Json json_from_fact(const FactParts& fact);
Json json_from_facts(const std::vector<FactParts>& facts);

}  // namespace fogline
