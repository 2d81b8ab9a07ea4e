#pragma once

#include <fogline/base/caution.h>
#include <fogline/base/fact.h>

#include <optional>
#include <string>
#include <vector>

namespace fogline {

/// What was seen of a roll that speaks for or against a cause. Densities are above clear film
/// unless they are of base plus fog; `_at_least` where the film is denser than the scan can see.
enum class Evidence {
  shadow,  ///< beside what is usual, as the median over frames
  shadow_at_least,
  highlight,
  highlight_at_least,
  edge_print,
  edge_print_at_least,
  edge_print_blunt,  ///< so dense that it tells nothing of development
  edge_print_blunt_at_least,
  leader_black,
  leader_black_at_least,
  leader_grey,
  base_fog_135,
  base_fog_clear,  ///< of film whose base is usually clear
  known_exposures,
  speed_point,
  leader_starved,  ///< by a weak developer
  base_fog_excess,
  grey_scan_of_mask,  ///< a grey scan can't tell fog from colour film's mask
  no_picture,
  edge_print_there,
  no_edge_print,
  edge_print_unread,
  leader_there,
  coloured_veil,
  milky_veil,
  yellow_veil,
  stain_with_silver,
  drying_marks,  ///< counted; `_strongest` where contrast is known of some
  drying_marks_strongest,
  air_bells,
  air_bells_strongest,
  dirt,
  dirt_strongest,
  scratches,
  scratches_strongest,
  light_struck,
  light_struck_strongest,
  uneven_development,
  uneven_development_strongest,
  told,  ///< only its sentence is known, from an older or newer report
};

template <>
std::span<const FactRow<Evidence>> fact_rows<Evidence>();

/// A further measurement that may part light from time.
enum class FurtherMeasurement {
  compare_frame_numbers,  ///< with another roll of this film, rightly developed
  scan_leader,
  scan_more_strips,
  calibrate_scanner,
  meter_walls,  ///< two metered frames on the next roll
};

template <>
std::span<const FactRow<FurtherMeasurement>> fact_rows<FurtherMeasurement>();

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

/// A scan that tells no density, and which of its cautions says so.
struct UnfitScan {
  std::string file;
  /// Absent where none does.
  std::optional<Caution> caution;

  friend bool operator==(const UnfitScan&, const UnfitScan&) = default;
};

/// Something said of a roll as a whole: a cause, or a reason for which nothing can be said.
struct Finding {
  Cause cause = Cause::normal;
  /// A probability that holds, 0 to 1: of findings said at 0.8, 8 in 10 are true.
  double confidence = 0.0;
  /// What is stated, in the order in which it is said.
  std::vector<Fact<CauseStatement>> statements;
  /// What was seen that speaks for it.
  std::vector<Fact<Evidence>> evidence;
  /// Of `unfit-scan`: its evidence, one for each caution.
  std::vector<UnfitScan> unfit_scans;
  /// Where the cause stays open: what would tell most.
  std::optional<FurtherMeasurement> would_tell_most;

  friend bool operator==(const Finding&, const Finding&) = default;
};

/// A finding of which nothing is stated yet.
inline Finding finding_of(Cause cause, double confidence) {
  Finding finding;
  finding.cause = cause;
  finding.confidence = confidence;
  return finding;
}

}  // namespace fogline
