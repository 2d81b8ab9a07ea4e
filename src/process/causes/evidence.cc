#include <fogline/process/finding.h>

namespace fogline {

namespace {

using enum Evidence;

constexpr std::array<FactRow<Evidence>, 40> rows{{
    {shadow, "shadow", {"density", "frames", "usual_from", "usual_to"}},
    {shadow_at_least, "shadow-at-least", {"density", "frames", "usual_from", "usual_to"}},
    {highlight, "highlight", {"density", "frames", "usual_from", "usual_to"}},
    {highlight_at_least, "highlight-at-least", {"density", "frames", "usual_from", "usual_to"}},
    {edge_print, "edge-print", {"density", "usual_sd_share"}},
    {edge_print_at_least, "edge-print-at-least", {"density", "usual_sd_share"}},
    {edge_print_blunt, "edge-print-blunt", {"density"}},
    {edge_print_blunt_at_least, "edge-print-blunt-at-least", {"density"}},
    {leader_black, "leader-black", {"density"}},
    {leader_black_at_least, "leader-black-at-least", {"density"}},
    {leader_grey, "leader-grey", {"density", "usual_density"}},
    {base_fog_135, "base-fog-135", {"density"}},
    {base_fog_clear, "base-fog-clear", {"density"}},
    {known_exposures, "known-exposures", {"exposures", "contrast_index", "contrast_index_u95"}},
    {speed_point, "speed-point", {"stops_under_metered", "usual_stops"}},
    {leader_starved, "leader-starved", {"density", "usual_density"}},
    {base_fog_excess, "base-fog-excess", {"density", "usual_density"}},
    {grey_scan_of_mask, "grey-scan-of-mask"},
    {no_picture, "no-picture", {"film_mm"}},
    {edge_print_there, "edge-print-there", {"density"}},
    {no_edge_print, "no-edge-print"},
    {edge_print_unread, "edge-print-unread"},
    {leader_there, "leader-there", {"density"}},
    {coloured_veil, "coloured-veil", {"density", "density_u95"}},
    {milky_veil, "milky-veil", {"density", "density_u95"}},
    {yellow_veil, "yellow-veil", {"density", "density_u95"}},
    {stain_with_silver, "stain-with-silver", {"density", "density_u95"}},
    {drying_marks, "drying-marks", {"count"}},
    {drying_marks_strongest, "drying-marks-strongest", {"count", "contrast_density"}},
    {air_bells, "air-bells", {"count"}},
    {air_bells_strongest, "air-bells-strongest", {"count", "contrast_density"}},
    {dirt, "dirt", {"count"}},
    {dirt_strongest, "dirt-strongest", {"count", "contrast_density"}},
    {scratches, "scratches", {"count"}},
    {scratches_strongest, "scratches-strongest", {"count", "contrast_density"}},
    {light_struck, "light-struck", {"count"}},
    {light_struck_strongest, "light-struck-strongest", {"count", "contrast_density"}},
    {uneven_development, "uneven-development", {"count"}},
    {uneven_development_strongest, "uneven-development-strongest", {"count", "contrast_density"}},
    {told, "told"},
}};
static_assert(rows_in_order(rows));

}  // namespace

template <>
std::span<const FactRow<Evidence>> fact_rows<Evidence>() {
  return rows;
}

}  // namespace fogline
