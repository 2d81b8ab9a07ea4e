#pragma once

#include <fogline/base/fact.h>

namespace fogline {

/// Why a value isn't known. Grouped by the stage that says so.
enum class Unknown {
  not_told,  ///< what is known of this roll doesn't tell
};

template <>
std::span<const FactRow<Unknown>> fact_rows<Unknown>();

}  // namespace fogline
