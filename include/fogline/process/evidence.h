#pragma once

#include <fogline/base/fact.h>

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

}  // namespace fogline
