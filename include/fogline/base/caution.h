#pragma once

#include <fogline/base/fact.h>
#include <fogline/base/known.h>

#include <optional>
#include <string_view>

namespace fogline {

/// How much a caution weighs: a note to read, a caution that widens doubt, or a reason for which
/// the scan is unfit for densities.
enum class Severity { note, caution, unfit };

/// Something the reader of a report must know about one scan, a target or a calibration.
enum class CautionKind {
  // a file's own words
  resolution_tag_odd,   ///< states a resolution that can't be right
  transfer_assumed,     ///< doesn't tell its tone curve: sRGB is assumed
  profile_unfit,        ///< its colour profile is of no use; the caution's `why` says why
  profile_table,        ///< its colour profile has a table instead of tone curves
  several_pages,        ///< holds more than one full page
  transparency_unused,  ///< holds a transparency channel
  channels_unused,      ///< holds more channels than colours
  transfer_tag_odd,     ///< its tone table doesn't rise
  grey_response_curve,  ///< states densities in an outdated way
  // what a scan is fit for
  inverted,                   ///< was turned into a positive
  base_clipped,               ///< clear film stands at the top code
  no_film,                    ///< no film was found
  no_frames,                  ///< film, but neither perforations nor frames
  no_clear_film,              ///< no unexposed film in sight
  below_light_path,           ///< clear film reads clearer than any support
  below_clear_film,           ///< most pictures read thinner than clear film
  wedge_alone,                ///< a step wedge, and no other film
  transfer_unknown,           ///< the picture fits two tone curves
  bare_light_clipped,         ///< bare light stands at the top code
  bare_light_hidden,          ///< no bare light in sight
  bare_light_partly_clipped,  ///< part of the bare light stands at the top code
  channel_clipped,            ///< one colour of the light does, the others were read
  eight_bit,                  ///< 8 bits a channel
  camera_display_curve,       ///< a camera's finished picture
  grey_scan,                  ///< no colour
  resolution_tag_wrong,       ///< doesn't fit the perforations
  uneven_light,               ///< the lamp is uneven over the film
  glare_strong,               ///< much stray light
  glare_of_calibration,       ///< nothing opaque in sight: the calibration's share was taken
  glare_unknown,              ///< nothing opaque in sight: a usual share was taken
  // a scan beside its calibration
  zero_remembered,     ///< density zero is that of the calibration's scan
  scanner_shape_only,  ///< the calibration knows only the response's shape
  scanner_bits,        ///< other bits than the calibration's
  scanner_kind,        ///< a camera's scan, a calibration of none
  scanner_balance,     ///< the channels' bare light moved against one another
  scanner_zero,        ///< the bare light reads otherwise
  // a target
  bracket_ambiguous,      ///< fits its exposures another way too; `why` says which
  metered_frame_missing,  ///< a metered tone's frame can't be read
  wedge_place_doubtful,   ///< which step of a printed wedge is which
  target_unread,          ///< no characteristic curve; `why` says why
  // a calibration
  steps_counted_from_dark_end,   ///< the lightest can't be told from the bare light
  steps_counted_from_light_end,  ///< the bare light doesn't tell which is the lightest
  steps_left_out,                ///< don't fit the others; its numbers are those of the steps
  steps_clipped,                 ///< stand at the top code; its numbers are those of the steps
  reference_doubtful,            ///< the file's own curve reads the steps far otherwise
  bare_light_unknown,            ///< none below the top code beside the wedge
  stray_light_untold,            ///< nothing opaque in sight
  nominal_wedge,                 ///< densities as designed
  device_untold,                 ///< which kind of device isn't said
  shape_only,                    ///< one layer's density isn't known
  limit_low,                     ///< tells less than good negatives have
  eight_bits,                    ///< learned with 8 bits a channel
  // of another program
  told,  ///< only its sentence is known, and the code as its name
};

template <>
std::span<const FactRow<CautionKind>> fact_rows<CautionKind>();

/// The code that reports publish: cautions of one matter that differ in their advice share it.
std::string_view caution_code(CautionKind kind);

/// What cautions of several kinds have in common, and the reader can do about it.
enum class CautionFamily { none, clipping, inversion, glare, unevenness };
CautionFamily family_of(CautionKind kind);

struct Caution {
  Severity severity = Severity::note;
  Fact<CautionKind> fact;
  /// What lies behind it, where a kind says that it has one.
  std::optional<WhyUnknown> why = std::nullopt;

  friend bool operator==(const Caution&, const Caution&) = default;
};

}  // namespace fogline
