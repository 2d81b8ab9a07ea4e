#pragma once

#include <array>
#include <cstddef>
#include <span>
#include <string>
#include <string_view>
#include <utility>
#include <vector>

namespace fogline {

/// A statement as a value: which one, its numbers, and the names it speaks of. The stage that knows
/// it makes it; `words` alone says it in English; `record` writes its code and numbers and reads
/// them back.
///
/// `Kind` is an enumeration whose rows (`fact_rows`) tell what belongs to each of its members.
template <typename Kind>
struct Fact {
  Kind kind{};
  /// In the order, and the units, that the kind's row names.
  std::vector<double> numbers;
  /// Files, labels, dates: in the order of the kind's row.
  std::vector<std::string> names;
  /// The sentence itself, where it came from a report that kept no numbers; empty otherwise.
  std::string told;

  friend bool operator==(const Fact&, const Fact&) = default;
};

template <typename Kind>
Fact<Kind> fact_of(Kind kind, std::vector<double> numbers = {},
                   std::vector<std::string> names = {}) {
  return {kind, std::move(numbers), std::move(names), {}};
}

/// What one member of an enumeration of facts is called in reports, and what comes with it. Codes
/// never change once published.
template <typename Kind>
struct FactRow {
  Kind kind;
  std::string_view code;
  /// Names of its numbers, units in them; the rest is empty.
  std::array<std::string_view, 6> numbers{};
  std::array<std::string_view, 3> names{};
};

/// True where row i is that of member i: what lets a member find its row, and its words, by place.
template <typename Rows>
constexpr bool rows_in_order(const Rows& rows) {
  for (std::size_t i = 0; i < rows.size(); ++i) {
    if (static_cast<std::size_t>(rows[i].kind) != i) {
      return false;
    }
  }
  return true;
}

/// The rows of an enumeration, in the order of its members; specialised beside each enumeration.
template <typename Kind>
std::span<const FactRow<Kind>> fact_rows();

/// The row of one member.
template <typename Kind>
const FactRow<Kind>& fact_row(Kind kind) {
  return fact_rows<Kind>()[static_cast<std::size_t>(kind)];
}

}  // namespace fogline
