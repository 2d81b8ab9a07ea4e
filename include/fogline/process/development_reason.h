#pragma once

#include <fogline/base/fact.h>

namespace fogline {

/// Why the next roll's development is advised as it is. `lands`: the chance of landing within the
/// aim's tolerance, beside that of the old time; `_at` another temperature.
enum class DevelopmentReason {
  contrast_seen,  ///< with the ends of its interval, beside the aim
  within_tolerance,
  too_little_known,
  time_lands,
  more_time_lands,
  less_time_lands,
  time_lands_at,
  more_time_lands_at,
  less_time_lands_at,
  time_doubt,
  time_doubt_untold,
  usual_growth,
  usual_growth_type_untold,  ///< the film's type would narrow it
  time_untold,               ///< on the card
  temperature_untold,        ///< on the card
  too_warm,
  short_when_warm,
  unusual_temperature,
  tank_changed,
  too_short,
  far_from_tried,
  out_of_reach,
  shared_tank,
  told,  ///< only its sentence is known, from an older or newer report
};

template <>
std::span<const FactRow<DevelopmentReason>> fact_rows<DevelopmentReason>();

}  // namespace fogline
