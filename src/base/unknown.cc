#include <fogline/base/unknown.h>

#include <array>

namespace fogline {

template <>
std::span<const FactRow<Unknown>> fact_rows<Unknown>() {
  static constexpr std::array<FactRow<Unknown>, 1> rows{{
      {Unknown::not_told, "not-told"},
  }};
  return rows;
}

}  // namespace fogline
