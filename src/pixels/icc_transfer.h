#pragma once

#include "pixels/tone_curve.h"

#include <fogline/base/known.h>

#include <cstddef>

namespace fogline {

/// What an ICC profile says of tone.
struct IccTone {
  /// Absent where the profile can't be used.
  Known<ToneCurve> curve;
  /// True where the profile has no tone curves and its table was followed along the grey axis.
  bool from_table = false;
};

/// Reads the tone curve of each channel of an embedded profile: the TRC tags of a matrix RGB or
/// grey profile (ICC.1, read by Little CMS), else the luminance along the grey axis of its table.
/// `channels` (1 or 3) must fit the profile's colour space.
IccTone icc_tone(const void* profile, std::size_t bytes, int channels);

}  // namespace fogline
