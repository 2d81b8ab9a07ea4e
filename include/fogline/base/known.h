#pragma once

#include <fogline/base/fact.h>

#include <optional>
#include <utility>

namespace fogline {

/// Why a value isn't known. Grouped by the stage that says so.
enum class Unknown {
  not_told,  ///< what is known of this roll doesn't tell

  // measurement
  scan_silent,        ///< the scan doesn't tell
  no_densities,       ///< this scan tells no densities
  no_zero_for_base,   ///< no bare light in sight, so base plus fog has no zero
  no_edge_print,      ///< none wide enough to be read
  no_leader,          ///< no fogged leader
  nothing_opaque,     ///< nothing opaque by which stray light could be told
  not_calibrated,     ///< no calibration of the scanner was given
  no_scale,           ///< neither perforations nor a tag nor a film width
  frame_hidden,       ///< too little of the frame is in sight
  frame_too_dense,    ///< beyond what the scan tells: only a lower bound
  frame_below_clear,  ///< reads thinner than clear film, which no picture is
  no_frame_read,      ///< no frame tells its densities
  marks_too_coarse,   ///< only large plain marks can be told at so few pixels
  uneven_surround,    ///< a mark's surround isn't even enough
  mark_without_edge,  ///< a mark has no edge by which its area could be told
  // colour of clear film
  grey_scan,             ///< a tint shows only in colour
  lamp_colour_clipped,   ///< bare light stands at the top code
  lamp_colour_hidden,    ///< no bare light in sight
  no_clear_colour,       ///< no clear film in colour in sight
  mask_of_colour_stock,  ///< as orange as colour stock's own mask
  only_strong_tints,     ///< the scan would show a strong tint only
  colours_in_pictures,   ///< pictures whose colours no silver gives: colour film
  colour_of_no_tint,     ///< a colour that no known tint gives
  trace_of_colour,       ///< too faint to be told from the stock's own
  colour_of_several,     ///< fits more than one kind of tint
  // steps that don't count
  step_clipped,        ///< stands at the top code
  step_without_light,  ///< no light is left above the noise
  step_off_response,   ///< doesn't fit a scanner's other steps
  step_off_curve,      ///< doesn't fit a curve's other steps
  step_too_dense,      ///< denser than the scan can tell
  step_not_exposed,    ///< the wedge wasn't exposed on the film
  no_wedge_step,       ///< no step of a wedge
  // contrast without a target
  few_frames_for_contrast,  ///< fewer than two whole frames
  few_frames_for_range,     ///< the same, of density range
  frames_too_dense,         ///< most frames' range is only a lower bound
  // a target's curve
  no_target,               ///< no target of known exposures
  first_frame_missing,     ///< the bracket's first frame isn't among those found
  no_bracket_frame,        ///< no frame of the bracket was found
  bracket_frames_missing,  ///< which of the exposures are missing can't be told
  bracket_not_rising,      ///< densities don't rise with the exposures
  bracket_fits_turned,     ///< fits with the film the other way round too
  bracket_fits_shifted,    ///< fits from another frame on too
  no_exposure_read,        ///< none of the known exposures could be read
  no_film_for_wedge,       ///< too little film in sight
  no_printed_wedge,        ///< no row of even areas that darken
  printed_steps_too_many,  ///< more steps than the wedge has
  no_wedge_read,           ///< no printed wedge could be read
  wedge_place_unsure,      ///< which step of the printed wedge is which
  one_exposed_step,        ///< a single one can be used
  few_exposed_steps,       ///< fewer than a curve needs can be used
  no_rising_curve,         ///< no curve passes the steps
  // numbers of a curve
  curve_too_short,      ///< the curve doesn't reach far enough
  needs_less_exposure,  ///< needs the curve below the least exposure
  needs_more_exposure,  ///< needs the curve above the greatest exposure
  draws_too_short,      ///< the steps leave curves possible that don't reach far enough
  straight_to_the_end,  ///< the straight line goes on as far as the curve can be told
  exposures_relative,   ///< a speed needs lux seconds
  triangle_not_met,     ///< the contrast condition isn't met
  triangle_untold,      ///< whether it is met can't be told
  curve_not_metered,    ///< no exposure of the curve was metered
  no_exposure_index,    ///< the roll card has none
  // a file's colour profile
  profile_too_large,
  profile_damaged,
  profile_of_other_kind,
  profile_without_curve,
  profile_not_rising,

  // process
  no_density_scan,     ///< no scan tells densities
  no_clear_film,       ///< pictures are there, clear film to count from isn't
  no_picture,          ///< nothing to judge light and development by
  unusual_roll,        ///< shadows and highlights fit no roll of the population
  nothing_metered,     ///< exposures are known from each other only
  no_curve_contrast,   ///< the curve tells no contrast index
  own_process,         ///< chromogenic film has a time of its own
  colour_film,         ///< by mask or pictures: judged as no black-and-white film
  film_not_developed,  ///< no time mends that
  developer_weak,      ///< what time would do in it can't be told
  contrast_untold,     ///< this roll's
  film_not_exposed,    ///< no exposure mends that
  exposure_untold,     ///< this roll's
};

template <>
std::span<const FactRow<Unknown>> fact_rows<Unknown>();

/// Why a value is absent.
using WhyUnknown = Fact<Unknown>;

/// A value, or why there is none. Used like an optional; one that nobody has set says that it isn't
/// told.
template <typename T>
class Known {
 public:
  Known() = default;
  Known(T value) : value_(std::move(value)) {}
  Known(WhyUnknown why) : why_(std::move(why)) {}
  Known(Unknown why) : why_(fact_of(why)) {}

  [[nodiscard]] bool has_value() const { return value_.has_value(); }
  explicit operator bool() const { return value_.has_value(); }

  /// Of a value that is there.
  const T& operator*() const { return *value_; }
  T& operator*() { return *value_; }
  const T* operator->() const { return &*value_; }
  T* operator->() { return &*value_; }

  template <typename U>
  T value_or(U&& other) const {
    return value_.value_or(std::forward<U>(other));
  }
  /// The value alone, for those who don't ask why.
  [[nodiscard]] const std::optional<T>& optional() const { return value_; }

  /// Of a value that is absent.
  [[nodiscard]] const WhyUnknown& why() const { return why_; }

  friend bool operator==(const Known& one, const Known& other) {
    return one.value_ == other.value_ && (one.value_.has_value() || one.why_ == other.why_);
  }

 private:
  std::optional<T> value_;
  WhyUnknown why_;
};

/// A value that may be absent, with the reason for which it then is.
template <typename T>
Known<T> known_or(std::optional<T> value, WhyUnknown why) {
  return value ? Known<T>(*std::move(value)) : Known<T>(std::move(why));
}
template <typename T>
Known<T> known_or(std::optional<T> value, Unknown why) {
  return known_or(std::move(value), fact_of(why));
}

}  // namespace fogline
