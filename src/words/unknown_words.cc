#include "words/unknown_words.h"

#include <array>

namespace fogline {

namespace {

constexpr auto words = std::to_array<FactWords<Unknown>>({
    {Unknown::not_told, "What is known of this roll doesn't tell."},

    // measurement
    {Unknown::scan_silent, "The scan doesn't tell."},
    {Unknown::no_densities, "This scan tells no densities."},
    {Unknown::no_zero_for_base,
     "No bare light path is in sight, so base plus fog has no zero to be read from."},
    {Unknown::no_edge_print, "No edge print wide enough to be read was found."},
    {Unknown::no_leader, "No fogged leader is in the scan."},
    {Unknown::nothing_opaque, "Nothing opaque is in sight by which stray light could be told."},
    {Unknown::not_calibrated, "No calibration of the scanner was given."},
    {Unknown::no_scale,
     "Neither perforations nor a usable resolution tag nor a known film width give the scale."},
    {Unknown::frame_hidden, "Too little of the frame is in sight."},
    {Unknown::frame_too_dense,
     "The frame is denser than this scan can tell, so its range is only a lower bound."},
    {Unknown::frame_below_clear,
     "The frame reads thinner than clear film, which no picture is: the light changes between the "
     "two, or one of them was mistaken."},
    {Unknown::no_frame_read, "No frame tells its densities."},
    {Unknown::marks_too_coarse,
     "Seen at {pixels_per_mm:0} pixels a millimetre only large plain marks can be told: drying "
     "rings, air bells from 0.8 mm, long scratches. For dust, fibres and pinholes scan fewer "
     "strips at a time, at 600 pixels an inch or finer."},
    {Unknown::uneven_surround, "Its surround isn't even enough to tell."},
    {Unknown::mark_without_edge, "It has no edge by which its area could be told."},
    {Unknown::grey_scan, "The scan is grey: a tint shows only in a scan in colour."},
    {Unknown::lamp_colour_clipped,
     "Bare light stands at the top code, so the film's colour can't be told from the lamp's."},
    {Unknown::lamp_colour_hidden,
     "No bare light path is in sight, so the film's colour can't be told from the lamp's."},
    {Unknown::no_clear_colour, "No clear film in colour is in sight."},
    {Unknown::mask_of_colour_stock,
     "Clear film is as orange as the mask of colour stock: its own colour, no tint."},
    {Unknown::only_strong_tints, "This scan would show a tint only where it is strong."},
    {Unknown::colours_in_pictures,
     "The pictures hold colours that no silver gives: this is colour film, and its base has a "
     "colour of its own."},
    {Unknown::colour_of_no_tint,
     "Clear film has a colour that no known tint gives: perhaps the stock's own."},
    {Unknown::trace_of_colour,
     "A trace of colour shows, too faint to be told from the stock's own."},
    {Unknown::colour_of_several, "A tint shows, but its colour fits more than one kind."},
    {Unknown::step_clipped, "It stands at the top code."},
    {Unknown::step_without_light, "No light is left above the noise."},
    {Unknown::step_off_response,
     "It doesn't fit the other steps: look for dirt or a scratch on it, or a slip in the "
     "reference."},
    {Unknown::step_off_curve, "It doesn't fit the other steps."},
    {Unknown::step_too_dense, "It is denser than this scan can tell."},
    {Unknown::step_not_exposed, "This wedge was not exposed on the film."},
    {Unknown::no_wedge_step, "It is no step of a wedge."},
    {Unknown::few_frames_for_contrast,
     "The pictures' own contrast can't be told from fewer than two whole frames: a flat scene and "
     "a "
     "short development look alike."},
    {Unknown::few_frames_for_range,
     "The median density range can't be told from fewer than two whole frames."},
    {Unknown::frames_too_dense,
     "Most frames are denser than this scan can tell, so their range is only a lower bound."},
    {Unknown::no_target, "No target of known exposures is on the roll."},
    {Unknown::first_frame_missing,
     "the bracket's first frame, number {frame:0}, isn't among those found"},
    {Unknown::no_bracket_frame, "no frame of the bracket was found"},
    {Unknown::bracket_frames_missing,
     "{frames:0} frames were found, and the card tells {exposures:0} exposures: which of them are "
     "missing can't be told"},
    {Unknown::bracket_not_rising,
     "the frames' densities don't rise with the exposures on the card, either way round"},
    {Unknown::bracket_fits_turned,
     "the bracket fits the exposures on the card another way as well (film the other way round)"},
    {Unknown::bracket_fits_shifted,
     "the bracket fits the exposures on the card another way as well (beginning with another "
     "frame)"},
    {Unknown::no_exposure_read, "none of the known exposures could be read"},
    {Unknown::no_film_for_wedge, "too little film is in sight"},
    {Unknown::no_printed_wedge,
     "no printed wedge is in sight: no row of five or more even areas of one size that darken "
     "from one to the next"},
    {Unknown::printed_steps_too_many,
     "it shows {shown_steps:0} steps, but {reference} has {wedge_steps:0}"},
    {Unknown::no_wedge_read, "no printed wedge could be read"},
    {Unknown::wedge_place_unsure, "which step of the printed wedge is which isn't sure"},
    {Unknown::one_exposed_step,
     "only 1 exposed step can be used and a curve needs {needed_steps:0}"},
    {Unknown::few_exposed_steps,
     "only {usable_steps:0} exposed steps can be used and a curve needs {needed_steps:0}"},
    {Unknown::no_rising_curve,
     "no curve passes the exposed steps; their densities don't rise with exposure"},
    {Unknown::curve_too_short, "the curve doesn't reach far enough"},
    {Unknown::needs_less_exposure,
     "it needs the curve from log H {needed_log_h:2}, and the least exposure is {least_log_h:2}"},
    {Unknown::needs_more_exposure,
     "it needs the curve up to log H {needed_log_h:2}, and the greatest exposure is "
     "{greatest_log_h:2}"},
    {Unknown::draws_too_short, "the steps leave curves possible that don't reach far enough"},
    {Unknown::straight_to_the_end, "the straight line goes on as far as the curve can be told"},
    {Unknown::exposures_relative,
     "the exposures are only relative, and a speed needs them in lux seconds"},
    {Unknown::triangle_not_met, "the contrast condition isn't met: it is not an ISO speed"},
    {Unknown::triangle_untold, "it can't be told whether the contrast condition is met"},
    {Unknown::curve_not_metered, "no exposure of this curve was metered"},
    {Unknown::no_exposure_index, "the roll card has no exposure_index"},
    {Unknown::profile_too_large, "it is larger than any real profile"},
    {Unknown::profile_damaged, "it is damaged"},
    {Unknown::profile_of_other_kind, "it is made for another kind of picture"},
    {Unknown::profile_without_curve, "it holds no tone curve"},
    {Unknown::profile_not_rising, "its tone curve doesn't rise from dark to light"},

    // process
    {Unknown::no_density_scan, "No scan of this roll tells densities."},
    {Unknown::no_clear_film,
     "The pictures' densities above clear film can't be read: no clear film is in sight."},
    {Unknown::no_picture, "No picture is in sight to judge light and development by."},
    {Unknown::unusual_roll,
     "Shadows and highlights fit no usual roll at all: flat subjects, fog within the pictures, or "
     "a tone curve that isn't what the scan says."},
    {Unknown::nothing_metered, "Nothing on this roll was metered; only development was judged."},
    {Unknown::no_curve_contrast, "The curve tells no contrast index."},
    {Unknown::own_process,
     "This is chromogenic film: its picture is dye, and no rule known here gives its time. Keep to "
     "the time of its own process."},
    {Unknown::colour_film,
     "This is colour film, by its orange mask or by colours in its pictures, whose light and time "
     "can't be judged as those of black-and-white film."},
    {Unknown::film_not_developed,
     "The film wasn't developed at all, and no time can mend that: find out first whether the "
     "developer was dead or the baths were swapped."},
    {Unknown::developer_weak,
     "The developer was weak: make it up fresh and keep your time. What a longer time would do in "
     "a dying developer can't be told."},
    {Unknown::contrast_untold,
     "This roll's contrast couldn't be told, so nothing speaks against your time."},
    {Unknown::film_not_exposed,
     "The film wasn't exposed: watch the rewind crank turn while winding on, and look through the "
     "open back at the shutter."},
    {Unknown::exposure_untold, "This roll's exposure couldn't be told."},
});
static_assert(rows_in_order(words));

}  // namespace

std::span<const FactWords<Unknown>> unknown_words() {
  return words;
}

std::string unknown_sentence(const WhyUnknown& why) {
  return sentence_of(why, unknown_words());
}

bool is_told(const WhyUnknown& why) {
  return why.kind != Unknown::not_told || !why.told.empty();
}

std::string reason_sentence(const WhyUnknown& why) {
  return is_told(why) ? unknown_sentence(why) : std::string();
}

}  // namespace fogline
