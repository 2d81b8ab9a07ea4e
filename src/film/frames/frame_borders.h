#pragma once

#include "film/film_layout.h"
#include "film/frames/frame_profile.h"
#include "film/frames/frame_search.h"

#include <vector>

namespace fogline {

/// Usual across extent of frames on a strip, mm.
struct AcrossExtent {
  double begin_mm = 0.0;
  double end_mm = 0.0;
};

/// Where the frames of a strip begin and end across the film: the strip's median of the borders
/// that show near the usual places, within `slack_mm`.
AcrossExtent frame_across(const ExcessImage& image, const FrameSeries& series, AcrossExtent usual,
                          double slack_mm, double noise);

/// Turns found spans into frames: drops spans without evidence, moves each border to where it shows
/// best, cuts frames at the end of the film in sight, marks overlaps, and infers blank frames
/// between found ones at the strip's own pitch.
std::vector<FilmFrame> settle_frames(const FrameSeries& series, const FrameProfile& profile,
                                     AcrossExtent across, const FilmStrip& film);

}  // namespace fogline
