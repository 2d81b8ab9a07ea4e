#pragma once

#include <fogline/base/fact.h>

namespace fogline {

/// What a finding states. Contrast indices come with their u95 and the aim; stops are amounts,
/// their sign being the member's.
enum class CauseStatement {
  light_and_development_right,
  development_right,  ///< light wasn't judged
  light_short,
  light_plentiful,
  development_short,
  development_long,
  perhaps_right,
  perhaps_too_little_light,
  perhaps_too_much_light,
  perhaps_too_little_development,
  perhaps_too_much_development,
  developer_weak,
  perhaps_developer_weak,
  not_exposed,
  perhaps_not_exposed,
  not_developed,
  perhaps_not_developed,
  fogged,
  perhaps_fogged,
  dye_left,
  looks_milky,
  stained_yellow,
  stained_with_silver,  ///< a staining developer's own, no fault
  perhaps_stocks_own,   ///< the colour: what the clean base looks like isn't known
  drops_dried,
  air_bells_clung,
  dirt_lies,
  scratched,
  light_struck,
  developed_unevenly,
  no_scan_tells_density,
  some_scans_tell_none,
  told,  ///< only its sentence is known, from an older or newer report
};

template <>
std::span<const FactRow<CauseStatement>> fact_rows<CauseStatement>();

}  // namespace fogline
