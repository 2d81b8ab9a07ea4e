#include "film/strips/window_strips.h"

#include "film/frames/frame_borders.h"
#include "film/frames/frame_search.h"
#include "film/straight_strip.h"
#include "film/strips/clear_level.h"
#include "film/strips/film_windows.h"
#include "film/strips/window_format.h"
#include "numerics/robust.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <optional>

namespace fogline {

namespace {

/// The holder's edge is blurred and throws a shadow: left out, mm.
constexpr double window_margin_mm = 0.2;
/// The strip's edge is left out when clear level is read: blur, and the film's own edge.
constexpr double edge_inset_mm = 0.5;

/// Bare light at the ends of a holder's window: full-height columns brighter by more than a step
/// than the brightest film elsewhere. Returns how many columns at the given end.
int bare_columns(const cv::Mat1f& excess, bool at_begin) {
  constexpr double film_step = 0.04;
  const auto level = [&](int x, double share) {
    std::vector<double> column;
    for (int y = excess.rows / 6; y < excess.rows - excess.rows / 6; ++y) {
      if (!std::isnan(excess(y, x))) {
        column.push_back(static_cast<double>(excess(y, x)));
      }
    }
    return column.empty() ? NAN : percentile(column, share);
  };
  // Walk in from the end while the whole column, to its darkest, is one bright level.
  const double first = level(at_begin ? 2 : excess.cols - 3, 0.5);
  int count = 0;
  while (count < excess.cols) {
    const int x = at_begin ? count : excess.cols - 1 - count;
    if (!(level(x, 0.95) < first + film_step)) {
      break;
    }
    ++count;
  }
  if (count == 0 || count == excess.cols) {
    return 0;
  }
  std::vector<double> film;
  for (int i = count + 3; i < excess.cols; i += 3) {
    const double clearest = level(at_begin ? i : excess.cols - 1 - i, 0.1);
    if (!std::isnan(clearest)) {
      film.push_back(clearest);
    }
  }
  const bool brighter = !film.empty() && first < percentile(film, 0.03) - film_step;
  return brighter ? count : 0;
}

/// A holder's window may be longer than the film: drops full-height columns at the ends that are
/// one dark level from top to bottom, far above clear film.
void trim_opaque_ends(FilmStrip& film, const StraightStrip& strip) {
  const ClearLevel level = clear_level_from_brightest(strip);
  const cv::Mat1f& excess = level.excess.excess;
  constexpr double opaque_excess = 1.2;
  constexpr double holder_scatter = 0.35;
  const auto is_holder = [&](int x) {
    std::vector<double> column;
    for (int y = 0; y < excess.rows; ++y) {
      if (!std::isnan(excess(y, x))) {
        column.push_back(static_cast<double>(excess(y, x)));
      }
    }
    return column.empty() || (percentile(column, 0.1) > opaque_excess &&
                              percentile(column, 0.9) - percentile(column, 0.1) < holder_scatter);
  };
  int begin = 0;
  int end = excess.cols;
  while (begin < end && is_holder(begin)) {
    ++begin;
  }
  while (end > begin && is_holder(end - 1)) {
    --end;
  }
  if (end > begin) {
    film.along_begin_mm += begin / strip.pixels_per_mm;
    film.along_end_mm -= (excess.cols - end) / strip.pixels_per_mm;
  }
}

void trim_bare_ends(FilmStrip& film, const StraightStrip& strip) {
  const ClearLevel level = clear_level_from_brightest(strip);
  const double px = strip.pixels_per_mm;
  const FilmExtent whole = strip.extent;
  const int begin = bare_columns(level.excess.excess, true);
  const int end = bare_columns(level.excess.excess, false);
  constexpr double margin_mm = 0.5;
  if (begin > 0) {
    film.along_begin_mm = whole.along_begin_mm + begin / px;
    film.bare_light.push_back({whole.along_begin_mm + margin_mm, film.along_begin_mm - margin_mm,
                               whole.across_begin_mm + margin_mm, whole.across_end_mm - margin_mm});
  }
  if (end > 0) {
    film.along_end_mm = whole.along_end_mm - end / px;
    film.bare_light.push_back({film.along_end_mm + margin_mm, whole.along_end_mm - margin_mm,
                               whole.across_begin_mm + margin_mm, whole.across_end_mm - margin_mm});
  }
}

FilmExtent inset(const FilmStrip& film, double mm) {
  return {film.along_begin_mm + mm, film.along_end_mm - mm, film.across_begin_mm + mm,
          film.across_end_mm - mm};
}

/// Film may lie askew in a holder's window: turns the map to the direction in which borders across
/// the film are sharpest.
void align_with_borders(FilmStrip& film, const ScanGrid& grid) {
  constexpr double greatest_turn_deg = 3.0;
  constexpr double turn_step_deg = 0.25;
  // Borders of large film are long: they needn't be seen as finely.
  constexpr double finest_pixels_per_mm = 5.0;
  constexpr double most_pixels = 4e5;
  const FilmExtent extent = inset(film, edge_inset_mm);
  const double area_mm2 = (extent.along_end_mm - extent.along_begin_mm) *
                          (extent.across_end_mm - extent.across_begin_mm);
  const double coarse_pixels_per_mm =
      std::min(finest_pixels_per_mm, std::sqrt(most_pixels / std::max(area_mm2, 1.0)));
  const PointPx centre = film.map.scan_from_film({0.0, 0.0});
  const double direction = film.map.direction_deg();
  const double height = frame_height_mm(film);
  double best = 0.0;
  FilmMap best_map = film.map;
  for (double turn = -greatest_turn_deg; turn <= greatest_turn_deg; turn += turn_step_deg) {
    const FilmMap map = FilmMap::straight(centre, direction + turn, film.map.pixels_per_mm());
    StraightStrip strip = straighten(grid, map, extent, coarse_pixels_per_mm);
    mask_outside(strip, map, film.window, window_margin_mm);
    const ClearLevel level = clear_level_from_brightest(strip);
    constexpr double half_share = 0.4;
    const FrameProfile profile =
        frame_profile(level.excess, -half_share * height, half_share * height, level.noise);
    double sharpness = 0.0;
    for (const double step : profile.step) {
      sharpness += step * step;
    }
    if (sharpness > best) {
      best = sharpness;
      best_map = map;
    }
  }
  film.map = best_map;
}

void find_frames_in_window(FilmStrip& film, const ScanGrid& grid, const FindOptions& options) {
  if (film.surround == Surround::opaque) {
    trim_opaque_ends(film,
                     straighten(grid, film.map, inset(film, edge_inset_mm), spot_pixels_per_mm));
    trim_bare_ends(film,
                   straighten(grid, film.map, inset(film, edge_inset_mm), spot_pixels_per_mm));
  }
  if (film.surround != Surround::bare_light) {
    align_with_borders(film, grid);
  }
  StraightStrip strip = straighten(grid, film.map, inset(film, edge_inset_mm), spot_pixels_per_mm);
  mask_outside(strip, film.map, film.window, window_margin_mm);
  const ClearLevel level = clear_level_from_brightest(strip);
  film.clear_log_light = level.above_bare;
  const double height = frame_height_mm(film);
  constexpr double margin_share = 0.04;
  const double half = 0.5 * height * (1.0 - 2.0 * margin_share);
  const FrameProfile profile = frame_profile(level.excess, -half, half, level.noise);
  constexpr double gap_share = 2.0 / 24.0;
  const FrameSeries series =
      find_frames(profile, frame_kinds(film, options, height), gap_share * height);
  const AcrossExtent across =
      frame_across(level.excess, series, {-0.5 * height, 0.5 * height}, 0.04 * height, level.noise);
  film.frames = settle_frames(series, profile, across, film);
}

/// A holder's opening for one frame: its size, or without a scale its shape, is the evidence; the
/// frame's borders may be covered.
bool is_frame_opening(const FilmStrip& film) {
  const double length = film.along_end_mm - film.along_begin_mm;
  const double width = film.across_end_mm - film.across_begin_mm;
  if (film.surround != Surround::opaque) {
    return false;
  }
  if (!film.scale_known) {
    constexpr double aspect_slack = 0.1;
    return std::abs(length / width - film_135::frame_along_mm / film_135::frame_across_mm) <
           aspect_slack;
  }
  constexpr double slack_mm = 2.5;
  return std::abs(length - film_135::frame_along_mm) < slack_mm &&
         std::abs(width - film_135::frame_across_mm) < slack_mm;
}

/// Where no perforation and no bare light shows that this is film, its frames must: dark rectangles
/// with straight borders against clear film. Without them it is any picture, or nothing.
void drop_doubtful_frames(FilmStrip& film) {
  if (is_frame_opening(film)) {
    return;
  }
  int borders = 0;
  for (const FilmFrame& frame : film.frames) {
    borders += frame.clear_borders;
  }
  const int enough = film.surround == Surround::image_border ? 2 : 1;
  if (borders < enough) {
    film.frames.clear();
    film.format = FilmFormat::unknown;
  }
}

FilmStrip strip_from_window(const FilmWindow& window, double scan_px, const FormatGuess& guess) {
  FilmStrip film;
  film.format = guess.format;
  film.scale_known = guess.scale_known;
  film.map = FilmMap::straight({window.x * scan_px, window.y * scan_px}, window.direction_deg,
                               guess.pixels_per_mm);
  const double half_length = 0.5 * window.length_px * scan_px / guess.pixels_per_mm;
  const double half_width = 0.5 * window.width_px * scan_px / guess.pixels_per_mm;
  film.along_begin_mm = -half_length;
  film.along_end_mm = half_length;
  film.across_begin_mm = -half_width;
  film.across_end_mm = half_width;
  film.surround = window.surround;
  if (window.surround == Surround::opaque) {
    for (const auto& [s, t] : {std::pair{-half_length, -half_width},
                               {half_length, -half_width},
                               {half_length, half_width},
                               {-half_length, half_width}}) {
      film.window.push_back(film.map.scan_from_film({s, t}));
    }
  }
  if (window.surround == Surround::bare_light) {
    constexpr double near_mm = 1.0;
    constexpr double far_mm = 3.0;
    film.bare_light = {{-half_length, half_length, -half_width - far_mm, -half_width - near_mm},
                       {-half_length, half_length, half_width + near_mm, half_width + far_mm}};
  }
  return film;
}

/// Whether what lies beside the frames is clear while the frames are not: a film's margins.
bool has_clear_margins(const FilmStrip& film, const ScanGrid& grid) {
  const StraightStrip strip =
      straighten(grid, film.map, inset(film, edge_inset_mm), spot_pixels_per_mm);
  const ClearLevel level = clear_level_from_brightest(strip);
  const auto middle = [&](double across_begin, double across_end) {
    std::vector<double> values;
    for (const FilmFrame& frame : film.frames) {
      for (double s = frame.along_begin_mm + 1.0; s < frame.along_end_mm - 1.0; s += 1.0) {
        for (double t = across_begin; t < across_end; t += 0.2) {
          const float value = level.excess.excess(level.excess.row(t), level.excess.column(s));
          if (!std::isnan(value)) {
            values.push_back(static_cast<double>(value));
          }
        }
      }
    }
    return values.empty() ? INFINITY : median(values);
  };
  constexpr double margin_mm = 0.8;
  constexpr double clear_excess = 0.05;
  const FilmFrame& first = film.frames.front();
  const double inside = middle(first.across_begin_mm + 1.0, first.across_end_mm - 1.0);
  return middle(film.across_begin_mm + margin_mm, first.across_begin_mm - 0.3) < clear_excess &&
         middle(first.across_end_mm + 0.3, film.across_end_mm - margin_mm) < clear_excess &&
         inside > 2.0 * clear_excess;
}

/// A piece on bare light whose scale no tag tells: tries the formats that have no perforations, and
/// keeps one that shows frames between clear margins where that format has them.
FilmStrip strip_by_frames(const FilmWindow& window, double scan_px, const ScanGrid& grid,
                          const FindOptions& options) {
  constexpr std::array<double, 2> sheet_aspect{1.15, 1.45};
  const double aspect = window.length_px / window.width_px;
  const bool may_be_sheet = aspect > sheet_aspect[0] && aspect < sheet_aspect[1];
  for (const FilmFormat format : {FilmFormat::sheet, FilmFormat::f120}) {
    if (format == FilmFormat::sheet && !may_be_sheet) {
      continue;
    }
    FormatGuess guess;
    guess.format = format;
    double width_mm = usual_width_mm(format, window.surround);
    if (format == FilmFormat::sheet) {
      const std::optional<double> sheet_mm = sheet_width_mm(aspect);
      guess.scale_known = sheet_mm.has_value();
      width_mm = sheet_mm.value_or(width_mm);
    }
    guess.pixels_per_mm = window.width_px * scan_px / width_mm;
    FilmStrip film = strip_from_window(window, scan_px, guess);
    find_frames_in_window(film, grid, options);
    const bool whole = std::any_of(film.frames.begin(), film.frames.end(),
                                   [](const FilmFrame& frame) { return !frame.cut; });
    if (whole && has_clear_margins(film, grid)) {
      return film;
    }
  }
  return strip_from_window(window, scan_px, guess_format(window, scan_px, options));
}

/// Windows in line, of one width and close to each other, show one strip through a holder with
/// bars: moves the frames of `next` into `film`.
bool join_in_line(FilmStrip& film, const FilmStrip& next) {
  constexpr double same_width_share = 0.06;
  constexpr double greatest_bar_share = 0.25;
  const double width = film.across_end_mm - film.across_begin_mm;
  const double next_width = next.across_end_mm - next.across_begin_mm;
  const PointMm begin =
      film.map.film_from_scan(next.map.scan_from_film({next.along_begin_mm, 0.0}));
  const PointMm end = film.map.film_from_scan(next.map.scan_from_film({next.along_end_mm, 0.0}));
  const double bar = begin.along_mm - film.along_end_mm;
  if (std::abs(width - next_width) > same_width_share * width ||
      std::abs(begin.across_mm) > same_width_share * width || bar < 0.0 ||
      bar > greatest_bar_share * width) {
    return false;
  }
  for (FilmFrame frame : next.frames) {
    const auto moved = [&](double along, double across) {
      return film.map.film_from_scan(next.map.scan_from_film({along, across}));
    };
    const PointMm first = moved(frame.along_begin_mm, frame.across_begin_mm);
    const PointMm last = moved(frame.along_end_mm, frame.across_end_mm);
    frame.along_begin_mm = first.along_mm;
    frame.across_begin_mm = first.across_mm;
    frame.along_end_mm = last.along_mm;
    frame.across_end_mm = last.across_mm;
    film.frames.push_back(frame);
  }
  film.along_end_mm = end.along_mm;
  film.bare_light.clear();
  // The bars between the windows are dark, and no patch or tone lies on them: the joined window
  // runs from the first corners to the last.
  if (film.window.size() == 4 && next.window.size() == 4) {
    film.window[1] = next.window[1];
    film.window[2] = next.window[2];
  }
  return true;
}

std::vector<FilmStrip> joined(std::vector<FilmStrip> strips) {
  std::sort(strips.begin(), strips.end(), [](const FilmStrip& a, const FilmStrip& b) {
    const PointPx p = a.map.scan_from_film({a.along_begin_mm, 0.0});
    const PointPx q = b.map.scan_from_film({b.along_begin_mm, 0.0});
    const bool lying = std::abs(a.map.direction_deg()) < 45.0;
    return lying ? p.x < q.x : p.y < q.y;
  });
  std::vector<FilmStrip> result;
  for (FilmStrip& strip : strips) {
    const bool taken = std::any_of(result.begin(), result.end(), [&](FilmStrip& film) {
      return film.surround == Surround::opaque && join_in_line(film, strip);
    });
    if (!taken) {
      result.push_back(std::move(strip));
    }
  }
  std::sort(result.begin(), result.end(), [](const FilmStrip& a, const FilmStrip& b) {
    const PointPx p = a.map.scan_from_film({a.along_begin_mm, 0.0});
    const PointPx q = b.map.scan_from_film({b.along_begin_mm, 0.0});
    const bool lying = std::abs(a.map.direction_deg()) < 45.0;
    return lying ? p.y < q.y : p.x < q.x;
  });
  return result;
}

}  // namespace

std::vector<FilmStrip> window_strips(const FindingImage& image, const ScanGrid& grid,
                                     const FindOptions& options) {
  std::vector<FilmStrip> strips;
  for (const FilmWindow& window : film_windows(image)) {
    const FormatGuess guess = guess_format(window, image.scan_px, options);
    if (guess.format == FilmFormat::unknown && window.surround == Surround::bare_light) {
      strips.push_back(strip_by_frames(window, image.scan_px, grid, options));
      continue;
    }
    FilmStrip film = strip_from_window(window, image.scan_px, guess);
    find_frames_in_window(film, grid, options);
    if (window.surround != Surround::bare_light) {
      drop_doubtful_frames(film);
    }
    strips.push_back(std::move(film));
  }
  return joined(std::move(strips));
}

}  // namespace fogline
