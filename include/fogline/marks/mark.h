#pragma once

#include <fogline/base/known.h>
#include <fogline/base/raster.h>

namespace fogline {

/// What marks on a film are, by what they look like (report schema's words).
enum class MarkKind {
  drying_mark,
  air_bell,
  dust,
  fibre,
  scratch,
  surge,
  light_leak,
  contact_mark,
  pinhole,
  kink_mark,
  static_mark,
  bromide_drag,
  low_level,
  fingerprint,
  interference_rings,
  unknown
};

/// One mark on the film.
struct Mark {
  MarkKind kind = MarkKind::unknown;
  /// Number of the strip, from 1.
  int strip = 0;
  /// Upright box in stored pixels.
  BoxPx box_px;
  /// Middle, on the strip.
  PointMm middle;
  /// Greatest extent, mm.
  double size_mm = 0.0;
  /// Density of the mark less its near surround, visual: positive is denser. At the rim of a ring,
  /// in the middle of a disc.
  Known<double> contrast_density = Unknown::uneven_surround;
  Known<double> area_mm2 = Unknown::mark_without_edge;
  /// A probability that holds, 0 to 1: that it is there and of this kind.
  double confidence = 0.0;

  friend bool operator==(const Mark&, const Mark&) = default;
};

}  // namespace fogline
