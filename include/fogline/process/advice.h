#pragma once

#include <fogline/base/fact.h>
#include <fogline/base/known.h>
#include <fogline/base/quantity.h>
#include <fogline/process/finding.h>

#include <optional>
#include <vector>

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

/// Why the next roll's development is advised as it is. `lands`: the chance of landing within the
/// aim's tolerance, beside that of the old time; `_at` another temperature.
enum class DevelopmentReason {
  contrast_seen,  ///< with the ends of its interval, beside the aim
  within_tolerance,
  too_little_known,
  light_first,  ///< light and time aren't both sure, and light is the surer
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

/// Why the next roll's exposure is advised as it is. Stops are amounts, their sign being the
/// member's.
enum class ExposureReason {
  got_more_light,
  got_less_light,
  no_error_worth_correcting,
  time_first,  ///< light and time aren't both sure, and time is the surer
  give_more_light,
  give_less_light,
  gross_error,  ///< points to meter, shutter, aperture or setting
  set_index,
  told,  ///< only its sentence is known, from an older or newer report
};

template <>
std::span<const FactRow<ExposureReason>> fact_rows<ExposureReason>();

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

/// The next roll's development.
struct DevelopmentAdvice {
  std::optional<double> time_s;
  std::optional<double> time_u95_s;
  std::optional<double> temperature_c;
  /// Change of time, positive: longer.
  std::optional<double> change_percent;
  /// Where nothing can be advised, why; nothing else is then told.
  Known<Quantity> predicted_contrast_index;
  std::vector<Fact<DevelopmentReason>> reasons;
  /// Where too little is known for a change: what would tell most.
  std::optional<FurtherMeasurement> would_tell_most;

  friend bool operator==(const DevelopmentAdvice&, const DevelopmentAdvice&) = default;
};

/// The next roll's exposure.
struct ExposureAdvice {
  /// Positive: give more light. Where nothing can be advised, why.
  Known<double> change_stops;
  std::optional<double> exposure_index;
  std::vector<Fact<ExposureReason>> reasons;

  friend bool operator==(const ExposureAdvice&, const ExposureAdvice&) = default;
};

enum class BathChange { keep, longer, shorter, renew, unknown };

/// One bath of the next roll.
struct BathAdvice {
  std::optional<double> time_s;
  BathChange change = BathChange::unknown;
  /// Wash by fills: inversions each.
  std::vector<int> fills;
  std::vector<Fact<BathReason>> reasons;

  friend bool operator==(const BathAdvice&, const BathAdvice&) = default;
};

/// What to change for the next roll, and what can still be done for this one.
struct Advice {
  DevelopmentAdvice development;
  ExposureAdvice exposure;
  BathAdvice stop;
  BathAdvice fix;
  BathAdvice wash;
  /// In the order that harms nothing.
  std::vector<Fact<RescueStep>> this_roll;

  friend bool operator==(const Advice&, const Advice&) = default;
};

}  // namespace fogline
