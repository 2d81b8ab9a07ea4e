#pragma once

#include <array>
#include <cstddef>
#include <string_view>

namespace fogline {

/// Whether an enumeration has a member of that value. The compiler spells a member by its name and
/// any other value as a cast, `(Kind)7`.
template <auto value>
constexpr bool is_member() {
  const std::string_view signature = __PRETTY_FUNCTION__;
  return signature[signature.find("value = ") + std::string_view("value = ").size()] != '(';
}

/// Whether rows of an enumeration (each with its member as `kind`) stand in the order of its
/// members and none is missing: for the static_assert beside each table.
template <typename Row, std::size_t count>
constexpr bool in_order_and_complete(const std::array<Row, count>& rows) {
  using Kind = decltype(Row::kind);
  for (std::size_t i = 0; i < count; ++i) {
    if (rows[i].kind != static_cast<Kind>(i)) {
      return false;
    }
  }
  return !is_member<static_cast<Kind>(count)>();
}

}  // namespace fogline
