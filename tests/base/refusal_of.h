#pragma once

#include <fogline/base/refusal.h>

#include <optional>
#include <ostream>

namespace fogline {

/// Lets a failed expectation print a refusal by its code.
inline void PrintTo(Refusal kind, std::ostream* out) {
  *out << fact_row(kind).code;
}

namespace test {

/// How an action was refused; nothing where it wasn't.
template <typename Action>
std::optional<FileError> refusal_of(const Action& action) {
  try {
    action();
  } catch (const FileError& error) {
    return error;
  }
  return std::nullopt;
}

/// Why, without numbers and names.
template <typename Action>
std::optional<Refusal> kind_of_refusal(const Action& action) {
  const auto refusal = refusal_of(action);
  return refusal ? std::optional(refusal->why().kind) : std::nullopt;
}

}  // namespace test
}  // namespace fogline
