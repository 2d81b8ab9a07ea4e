#pragma once

#include <fogline/base/fact.h>

#include <span>
#include <string>
#include <string_view>
#include <vector>

namespace fogline {

/// The English of one member of an enumeration of facts. Numbers and names stand in braces by the
/// names that the fact's row gives them, with their form behind a colon:
///   {clearing_over_fresh:1}  a number with one decimal (0 to 4), {tint:+2} with its sign
///   {time_s:clock}           9:30
///   {share:percent}          12 %
///   {change:stops}           2/3 of a stop, 1 stop, 2 1/3 stops
///   {stops:signed}           +0.33, -2: two digits, always with a sign
///   {frames:count}           no, one, ... twelve, 13
///   {frames:median}          the one frame, the median of 6 frames
///   {file}                   a name as it is
template <typename Kind>
struct FactWords {
  Kind kind;
  std::string_view text;
};

/// Fills a text's braces. `number_names` and `names` are those of the fact's row. Throws
/// std::logic_error for a brace that nothing fills: a slip in the table, found by its test.
std::string filled(std::string_view text, std::span<const std::string_view> number_names,
                   const std::vector<double>& numbers, std::span<const std::string_view> name_names,
                   const std::vector<std::string>& names);

/// A fact in English by its enumeration's words, which stand in the order of its members.
template <typename Kind>
std::string sentence_of(const Fact<Kind>& fact, std::span<const FactWords<Kind>> words) {
  if (!fact.told.empty()) {
    return fact.told;
  }
  const FactRow<Kind>& row = fact_row(fact.kind);
  return filled(words[static_cast<std::size_t>(fact.kind)].text, row.numbers, fact.numbers,
                row.names, fact.names);
}

}  // namespace fogline
