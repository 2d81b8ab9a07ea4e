#pragma once

#include "film/film_layout.h"
#include "film/frames/frame_profile.h"
#include "film/straight_strip.h"

namespace fogline {

/// How clear film reads along a strip, and how much it scatters.
struct ClearLevel {
  ExcessImage excess;
  /// Log light of clear film above the bare light of the perforations (0 where none are seen).
  double above_bare = 0.0;
  /// Standard deviation of clear film at the strip's resolution.
  double noise = 0.0;
};

/// Clear level of a strip with perforations: read between the holes and beside the frames, a smooth
/// course along and across taken out (lamp, lens), printed or fogged places dropped as outliers.
ClearLevel clear_level_from_rebate(const StraightStrip& strip, const FilmStrip& film);

/// Clear level of a strip whose rebate isn't in sight: the brightest film in the window, in pieces,
/// a slow course along it taken out.
ClearLevel clear_level_from_brightest(const StraightStrip& strip);

}  // namespace fogline
