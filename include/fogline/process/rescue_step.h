#pragma once

#include <fogline/base/fact.h>

#include <optional>

namespace fogline {

/// A bath that a step puts film into.
enum class Bath { fixer, sulfite, acid, water };

/// What can still be done for a developed film, and what is to be left alone, in the order that
/// harms nothing.
enum class RescueStep {
  scan_again,           ///< nothing is known of the film
  nothing_chromogenic,  ///< the base's colour is its own
  look_for_haze,
  doubt_tint,
  fix_milky,
  fix_for_dye,
  wash_out_dye,
  clear_stain,
  blow_off_dust,
  wipe_drying_marks,
  soak_out_rings,
  fade_dye,
  handle_with_care,
  nothing_needed,
  not_developed,
  not_exposed,
  retouch,
  keep_stain_of_silver,
  leave_silver,
  print_on,               ///< paper of this log exposure range
  print_on_by_condenser,  ///< the same, counted for condenser light
  told,                   ///< only its sentence is known, from an older or newer report
};

template <>
std::span<const FactRow<RescueStep>> fact_rows<RescueStep>();

/// The strongest bath that a step uses; nothing where the film stays dry.
std::optional<Bath> bath_of(RescueStep step);

/// Whether it is the usual caution for baths rather than a step.
constexpr bool is_caution(RescueStep step) {
  return step == RescueStep::handle_with_care;
}

}  // namespace fogline
