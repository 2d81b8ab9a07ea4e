#pragma once

#include "film/frames/frame_profile.h"

#include <optional>
#include <vector>

namespace fogline {

/// A frame's place along the film. Its full length, though part may lie outside the film in sight.
struct FrameSpan {
  double begin_mm = 0.0;
  double end_mm = 0.0;
  /// Share of the frame's height at which each border shows, 0 to 1.
  double begin_border = 0.0;
  double end_border = 0.0;
};

/// A kind of frame that may stand on the film: its length and how usual it is.
struct FrameKind {
  double length_mm = 0.0;
  /// Cameras of one kind differ by so much either way.
  double spread_mm = 0.0;
  /// Score to beat for choosing it over the usual kind (natural log units).
  double handicap = 0.0;
};

/// What was found along one strip.
struct FrameSeries {
  std::vector<FrameSpan> frames;
  double length_mm = 0.0;
  double score = 0.0;
};

/// Finds the frames along a strip by dynamic programming: the arrangement of equal rectangles that
/// best explains which columns are picture, which are clear, and where straight borders run across
/// the film. Gaps may be uneven, missing (overlap) or as long as blank film. The frame length is
/// common to the strip and chosen among `kinds`. `gap_mm` is the usual gap.
FrameSeries find_frames(const FrameProfile& profile, const std::vector<FrameKind>& kinds,
                        double gap_mm);

}  // namespace fogline
