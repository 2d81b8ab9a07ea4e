#pragma once

#include "film/film_layout.h"

#include <fogline/marks/mark.h>

namespace fogline {

/// A mark in a strip's own millimetres, before its place in the scan is told.
struct MarkCandidate {
  MarkKind kind = MarkKind::unknown;
  FilmExtent extent;
  PointMm middle;
  double size_mm = 0.0;
  double area_mm2 = 0.0;
  double contrast_density = 0.0;
  /// Of a line: its breadth, mm.
  double width_mm = 0.0;
  /// Log odds of being there and of this kind.
  double log_odds = 0.0;
};

}  // namespace fogline
