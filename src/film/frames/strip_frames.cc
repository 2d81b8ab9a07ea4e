#include "film/frames/strip_frames.h"

#include "film/frames/frame_borders.h"
#include "film/frames/frame_search.h"
#include "film/straight_strip.h"
#include "film/strips/clear_level.h"
#include "film/strips/film_extent.h"

#include <algorithm>

namespace fogline {

namespace {

/// Half of what is laid straight across a 135 strip: the film and 2 mm beyond.
constexpr double half_width_135_mm = film_135::width_mm / 2.0 + 2.0;
/// Frame evidence is read from the frame's height less this margin on both sides, mm: cameras'
/// gates differ and may sit off the middle.
constexpr double height_margin_mm = 1.0;
constexpr double across_slack_mm = 0.8;
constexpr double usual_gap_135_mm = 2.0;

/// Frames that cameras for 135 film make. Handicaps: one camera in twenty is not full frame,
/// and a picture may hold straight lines where a shorter frame would end.
std::vector<FrameKind> frame_kinds_135(const FindOptions& options) {
  constexpr double rare = 10.0;
  constexpr double very_rare = 12.0;
  if (options.frame_mm) {
    return {{*options.frame_mm, 0.8, 0.0}};
  }
  return {{36.0, 0.8, 0.0},
          {18.0, 0.8, rare},
          {24.0, 0.6, rare},
          {54.0, 1.0, very_rare},
          {65.0, 1.0, very_rare}};
}

bool is_leader(const FilmStrip& film, double along_mm) {
  return std::any_of(film.leaders.begin(), film.leaders.end(), [&](const FilmExtent& leader) {
    return along_mm >= leader.along_begin_mm && along_mm <= leader.along_end_mm;
  });
}

}  // namespace

void find_frames_on_perforated(FilmStrip& film, const ScanGrid& grid, const FindOptions& options) {
  const int width_px = grid.light.width() * grid.reduction;
  const int height_px = grid.light.height() * grid.reduction;
  const FilmExtent extent = widest_extent(film, width_px, height_px, half_width_135_mm);
  const StraightStrip strip = straighten(grid, film.map, extent, spot_pixels_per_mm);
  ClearLevel level = clear_level_from_rebate(strip, film);
  find_film_extent(film, level);
  film.clear_rebate_share = clear_rebate_share(film, level);
  find_leaders(film, level);
  film.clear_log_light = level.above_bare;

  const double half_height = film_135::frame_across_mm / 2.0 - height_margin_mm;
  FrameProfile profile =
      frame_profile(level.excess, std::max(-half_height, film.across_begin_mm + 0.3),
                    std::min(half_height, film.across_end_mm - 0.3), level.noise);
  for (std::size_t i = 0; i < profile.film.size(); ++i) {
    const double along = level.excess.along_mm(static_cast<int>(i));
    if (along < film.along_begin_mm || along > film.along_end_mm || is_leader(film, along)) {
      profile.film[i] = false;
      profile.picture[i] = profile.rises[i] = profile.falls[i] = 0.0;
    }
  }
  const FrameSeries series = find_frames(profile, frame_kinds_135(options), usual_gap_135_mm);
  const AcrossExtent across = frame_across(
      level.excess, series, {-film_135::frame_across_mm / 2.0, film_135::frame_across_mm / 2.0},
      across_slack_mm, level.noise);
  film.frames = settle_frames(series, profile, across, film);
}

}  // namespace fogline
