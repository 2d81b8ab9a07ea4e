#pragma once

#include "record/field_walker.h"

#include <fogline/base/fact.h>

#include <algorithm>
#include <array>
#include <cstddef>
#include <functional>
#include <span>
#include <string>
#include <string_view>
#include <vector>

namespace fogline {

/// What is written of a fact, whatever its enumeration.
struct FactParts {
  std::span<const std::string_view> codes;
  /// Names of the numbers and names of the member that `place` tells.
  std::function<std::span<const std::string_view>(std::size_t place)> number_names;
  std::function<std::span<const std::string_view>(std::size_t place)> name_names;
  std::size_t place = 0;
  std::vector<double> numbers;
  std::vector<std::string> names;
  std::string told;
};

/// The code of a fact of which only the sentence is known.
inline constexpr std::string_view told_code = "told";

/// Walks {code, numbers{}, names{}, told}. A code that this program doesn't know becomes
/// `told_code`, with the sentence that the file has beside the fact.
void walk_fact_parts(FieldWalker& walker, FactParts& parts);

/// Names up to the first empty one.
template <std::size_t count>
std::span<const std::string_view> names_in_use(const std::array<std::string_view, count>& names) {
  const auto end = std::find(names.begin(), names.end(), std::string_view());
  return {names.begin(), end};
}

template <typename Kind>
std::vector<std::string_view> codes_of() {
  std::vector<std::string_view> codes;
  for (const FactRow<Kind>& row : fact_rows<Kind>()) {
    codes.push_back(row.code);
  }
  return codes;
}

/// A fact of any enumeration.
template <typename Kind>
void walk_fact(FieldWalker& walker, Fact<Kind>& fact) {
  static const std::vector<std::string_view> codes = codes_of<Kind>();
  FactParts parts{codes,
                  [](std::size_t place) { return names_in_use(fact_rows<Kind>()[place].numbers); },
                  [](std::size_t place) { return names_in_use(fact_rows<Kind>()[place].names); },
                  static_cast<std::size_t>(fact.kind),
                  fact.numbers,
                  fact.names,
                  fact.told};
  walk_fact_parts(walker, parts);
  fact = {static_cast<Kind>(parts.place), std::move(parts.numbers), std::move(parts.names),
          std::move(parts.told)};
}

}  // namespace fogline
