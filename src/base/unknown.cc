#include <fogline/base/known.h>

#include <array>

namespace fogline {

namespace {

constexpr auto rows = std::to_array<FactRow<Unknown>>({
    {Unknown::not_told, "not-told"},

    // measurement
    {Unknown::scan_silent, "scan-silent"},
    {Unknown::no_densities, "no-densities"},
    {Unknown::no_zero_for_base, "no-zero-for-base"},
    {Unknown::no_edge_print, "no-edge-print"},
    {Unknown::no_leader, "no-leader"},
    {Unknown::nothing_opaque, "nothing-opaque"},
    {Unknown::not_calibrated, "not-calibrated"},
    {Unknown::no_scale, "no-scale"},
    {Unknown::frame_hidden, "frame-hidden"},
    {Unknown::frame_too_dense, "frame-too-dense"},
    {Unknown::frame_below_clear, "frame-below-clear"},
    {Unknown::no_frame_read, "no-frame-read"},
    {Unknown::marks_too_coarse, "marks-too-coarse", {"pixels_per_mm"}},
    {Unknown::uneven_surround, "uneven-surround"},
    {Unknown::mark_without_edge, "mark-without-edge"},
    {Unknown::grey_scan, "grey-scan"},
    {Unknown::lamp_colour_clipped, "lamp-colour-clipped"},
    {Unknown::lamp_colour_hidden, "lamp-colour-hidden"},
    {Unknown::no_clear_colour, "no-clear-colour"},
    {Unknown::mask_of_colour_stock, "mask-of-colour-stock"},
    {Unknown::only_strong_tints, "only-strong-tints"},
    {Unknown::colours_in_pictures, "colours-in-pictures"},
    {Unknown::colour_of_no_tint, "colour-of-no-tint"},
    {Unknown::trace_of_colour, "trace-of-colour"},
    {Unknown::colour_of_several, "colour-of-several"},
    {Unknown::step_clipped, "step-clipped"},
    {Unknown::step_without_light, "step-without-light"},
    {Unknown::step_off_response, "step-off-response"},
    {Unknown::step_off_curve, "step-off-curve"},
    {Unknown::step_too_dense, "step-too-dense"},
    {Unknown::step_not_exposed, "step-not-exposed"},
    {Unknown::no_wedge_step, "no-wedge-step"},
    {Unknown::few_frames_for_contrast, "few-frames-for-contrast"},
    {Unknown::few_frames_for_range, "few-frames-for-range"},
    {Unknown::frames_too_dense, "frames-too-dense"},
    {Unknown::no_target, "no-target"},
    {Unknown::first_frame_missing, "first-frame-missing", {"frame"}},
    {Unknown::no_bracket_frame, "no-bracket-frame"},
    {Unknown::bracket_frames_missing, "bracket-frames-missing", {"frames", "exposures"}},
    {Unknown::bracket_not_rising, "bracket-not-rising"},
    {Unknown::bracket_fits_turned, "bracket-fits-turned"},
    {Unknown::bracket_fits_shifted, "bracket-fits-shifted"},
    {Unknown::no_exposure_read, "no-exposure-read"},
    {Unknown::no_film_for_wedge, "no-film-for-wedge"},
    {Unknown::no_printed_wedge, "no-printed-wedge"},
    {Unknown::printed_steps_too_many,
     "printed-steps-too-many",
     {"shown_steps", "wedge_steps"},
     {"reference"}},
    {Unknown::no_wedge_read, "no-wedge-read"},
    {Unknown::wedge_place_unsure, "wedge-place-unsure"},
    {Unknown::one_exposed_step, "one-exposed-step", {"needed_steps"}},
    {Unknown::few_exposed_steps, "few-exposed-steps", {"usable_steps", "needed_steps"}},
    {Unknown::no_rising_curve, "no-rising-curve"},
    {Unknown::curve_too_short, "curve-too-short"},
    {Unknown::needs_less_exposure, "needs-less-exposure", {"needed_log_h", "least_log_h"}},
    {Unknown::needs_more_exposure, "needs-more-exposure", {"needed_log_h", "greatest_log_h"}},
    {Unknown::draws_too_short, "draws-too-short"},
    {Unknown::straight_to_the_end, "straight-to-the-end"},
    {Unknown::exposures_relative, "exposures-relative"},
    {Unknown::triangle_not_met, "triangle-not-met"},
    {Unknown::triangle_untold, "triangle-untold"},
    {Unknown::curve_not_metered, "curve-not-metered"},
    {Unknown::no_exposure_index, "no-exposure-index"},
    {Unknown::profile_too_large, "profile-too-large"},
    {Unknown::profile_damaged, "profile-damaged"},
    {Unknown::profile_of_other_kind, "profile-of-other-kind"},
    {Unknown::profile_without_curve, "profile-without-curve"},
    {Unknown::profile_not_rising, "profile-not-rising"},

    // process
    {Unknown::no_density_scan, "no-density-scan"},
    {Unknown::no_clear_film, "no-clear-film"},
    {Unknown::no_picture, "no-picture"},
    {Unknown::unusual_roll, "unusual-roll"},
    {Unknown::nothing_metered, "nothing-metered"},
    {Unknown::no_curve_contrast, "no-curve-contrast"},
    {Unknown::own_process, "own-process"},
    {Unknown::colour_film, "colour-film"},
    {Unknown::film_not_developed, "film-not-developed"},
    {Unknown::developer_weak, "developer-weak"},
    {Unknown::contrast_untold, "contrast-untold"},
    {Unknown::film_not_exposed, "film-not-exposed"},
    {Unknown::exposure_untold, "exposure-untold"},
});
static_assert(rows_in_order(rows));

}  // namespace

template <>
std::span<const FactRow<Unknown>> fact_rows<Unknown>() {
  return rows;
}

}  // namespace fogline
