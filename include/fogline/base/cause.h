#pragma once

#include <fogline/base/fact.h>

namespace fogline {

/// What is found on a roll: what its processing did, or why nothing can be said.
enum class Cause {
  normal,
  under_exposed,
  over_exposed,
  under_developed,
  over_developed,
  fogged,
  dye_left,
  fixing_incomplete,
  stained,
  drying_marks,
  air_bells,
  uneven_development,
  dirty,
  scratched,
  light_struck,
  not_exposed,
  not_developed,
  weak_developer,
  drift,       ///< from roll to roll
  unfit_scan,  ///< a scan tells no density
};

template <>
std::span<const FactRow<Cause>> fact_rows<Cause>();

}  // namespace fogline
