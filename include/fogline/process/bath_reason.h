#pragma once

#include <fogline/base/fact.h>

namespace fogline {

/// Why a bath of the next roll is advised as it is.
enum class BathReason {
  own_process,  ///< of chromogenic film
  // stop
  stop_longest,
  stop_enough,
  stop_water,
  stop_gas,
  // fixer: why to renew it
  clears_slowly,
  takes_too_much_silver,
  looks_milky,
  dye_left,
  fixes_too_long,
  make_up_fresh,
  // fixer: what its time rests on
  clearing_time_cubic,
  clearing_time_tabular,
  fixer_kind_untold,
  rapid_fixer,
  plain_fixer,
  rapid_fixer_type_untold,
  plain_fixer_type_untold,
  measure_clearing,
  // wash
  running_water,
  wash_fills,  ///< how many inversions each stands in the advice
  hardened_film,
  fill_for_dye,
  // fixer and wash
  unseen_by_scan,
  handle_with_care,
  told,  ///< only its sentence is known, from an older or newer report
};

template <>
std::span<const FactRow<BathReason>> fact_rows<BathReason>();

/// Whether it is the usual caution for baths rather than a reason.
constexpr bool is_caution(BathReason reason) {
  return reason == BathReason::handle_with_care;
}

}  // namespace fogline
