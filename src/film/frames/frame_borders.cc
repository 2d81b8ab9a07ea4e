#include "film/frames/frame_borders.h"

#include "numerics/robust.h"

#include <algorithm>
#include <cmath>

namespace fogline {

namespace {

/// A border counts as seen from this share of its length.
constexpr double seen_share = 0.3;
/// A border is beyond doubt from this share.
constexpr double sure_share = 0.6;
/// How far a border may lie from its place in the common arrangement, mm.
constexpr double border_search_mm = 0.9;
/// A sliver of a cut frame narrower than this tells nothing, mm.
constexpr double least_visible_mm = 2.0;
/// A frame cut by less than this is whole, mm.
constexpr double cut_slack_mm = 0.4;
/// Mean log likelihood ratio below which a frame without a border is blank film, not a picture.
constexpr double blank_ratio = -1.0;

std::size_t index_at(const FrameProfile& profile, double along_mm) {
  const double x = std::floor((along_mm - profile.along_begin_mm) * profile.pixels_per_mm);
  return static_cast<std::size_t>(
      std::clamp(x, 0.0, static_cast<double>(profile.picture.size() - 1)));
}

/// Which border of a frame: picture begins (+1) or ends (-1) with growing place.
enum class Border : int { begin = +1, end = -1 };

/// Place near `at_mm` where a border is steepest, as the middle of the peak; `at_mm` where it never
/// reaches the seen share of the height.
double best_border(const FrameProfile& profile, Border border, double at_mm, double& share) {
  const std::vector<double>& shares = border == Border::begin ? profile.rises : profile.falls;
  const auto sign = static_cast<double>(border);
  const std::size_t from = index_at(profile, at_mm - border_search_mm);
  const std::size_t to = index_at(profile, at_mm + border_search_mm);
  share = *std::max_element(shares.begin() + static_cast<std::ptrdiff_t>(from),
                            shares.begin() + static_cast<std::ptrdiff_t>(to) + 1);
  if (share < seen_share) {
    return at_mm;
  }
  double top = 0.0;
  for (std::size_t i = from; i <= to; ++i) {
    top = std::max(top, sign * profile.step[i]);
  }
  // Only the upper fifth of the peak: its foot is bent by what else lies near the border.
  constexpr double peak_share = 0.8;
  double weight = 0.0;
  double sum = 0.0;
  for (std::size_t i = from; i <= to; ++i) {
    const double excess = sign * profile.step[i] - peak_share * top;
    if (excess > 0.0) {
      weight += excess;
      sum += excess * static_cast<double>(i);
    }
  }
  return weight > 0.0 ? profile.along_begin_mm + sum / weight / profile.pixels_per_mm : at_mm;
}

double mean_ratio(const FrameProfile& profile, double begin_mm, double end_mm) {
  double sum = 0.0;
  int count = 0;
  for (std::size_t i = index_at(profile, begin_mm); i < index_at(profile, end_mm); ++i) {
    if (profile.film[i]) {
      sum += profile.picture[i];
      ++count;
    }
  }
  return count > 0 ? sum / count : 0.0;
}

/// Whether the stretch just outside a border is clear film.
bool is_clear_outside(const FrameProfile& profile, Border border, double at_mm) {
  constexpr double near_mm = 0.2;
  constexpr double far_mm = 0.6;
  constexpr double clear_ratio = -1.5;
  const double sign = -static_cast<double>(border);
  const double begin = at_mm + (sign > 0.0 ? near_mm : -far_mm);
  return mean_ratio(profile, begin, begin + far_mm - near_mm) < clear_ratio;
}

/// Share of the height of a stretch along the film at which light falls or rises across `at_mm`.
double across_border_share(const ExcessImage& image, double at_mm, double direction,
                           double begin_mm, double end_mm, double threshold) {
  constexpr double reach_mm = 0.35;
  constexpr double piece_mm = 1.0;
  int pieces = 0;
  int seen = 0;
  for (double s = begin_mm + 1.0; s + piece_mm < end_mm - 1.0; s += piece_mm) {
    const int x0 = image.column(s);
    const int x1 = image.column(s + piece_mm);
    const auto mean_rows = [&](double from_mm, double to_mm) {
      const int y0 = image.row(std::min(from_mm, to_mm));
      const int y1 = std::max(y0 + 1, image.row(std::max(from_mm, to_mm)));
      return cv::mean(image.excess(cv::Range(y0, y1), cv::Range(x0, std::max(x0 + 1, x1))))[0];
    };
    const double inside = mean_rows(at_mm, at_mm - direction * reach_mm);
    const double outside = mean_rows(at_mm, at_mm + direction * reach_mm);
    if (std::isnan(inside) || std::isnan(outside)) {
      continue;
    }
    ++pieces;
    seen += inside - outside > threshold ? 1 : 0;
  }
  return pieces > 0 ? static_cast<double>(seen) / pieces : 0.0;
}

double strip_border(const ExcessImage& image, const FrameSeries& series, double usual_mm,
                    double direction, double slack_mm, double threshold) {
  std::vector<double> places;
  const double first = image.along_mm(0);
  const double last = image.along_mm(image.excess.cols - 1);
  for (const FrameSpan& span : series.frames) {
    double top = 0.0;
    double weight = 0.0;
    double sum = 0.0;
    std::vector<std::pair<double, double>> shares;
    for (double at = usual_mm - slack_mm; at <= usual_mm + slack_mm; at += 0.1) {
      const double share = across_border_share(image, at, direction, std::max(first, span.begin_mm),
                                               std::min(last, span.end_mm), threshold);
      shares.emplace_back(at, share);
      top = std::max(top, share);
    }
    for (const auto& [at, share] : shares) {
      const double excess = share - 0.8 * top;
      if (excess > 0.0) {
        weight += excess;
        sum += excess * at;
      }
    }
    if (top >= seen_share) {
      places.push_back(sum / weight);
    }
  }
  return places.empty() ? usual_mm : median(places);
}

/// Frame numbers missing between two found frames become blank frames at the strip's own pitch.
void infer_blanks(std::vector<FilmFrame>& frames, double length_mm, double gap_mm) {
  const double pitch = length_mm + gap_mm;
  std::vector<FilmFrame> all;
  for (const FilmFrame& frame : frames) {
    if (!all.empty()) {
      const double distance = frame.along_begin_mm - all.back().along_end_mm - gap_mm;
      const int missing = static_cast<int>(std::floor(distance / pitch + 0.25));
      const double step = missing > 0 ? (distance + pitch) / (missing + 1) : 0.0;
      const FilmFrame before = all.back();
      for (int i = 1; i <= missing; ++i) {
        FilmFrame blank = before;
        blank.along_begin_mm = before.along_end_mm - length_mm + step * i;
        blank.along_end_mm = blank.along_begin_mm + length_mm;
        blank.inferred = true;
        blank.cut = false;
        blank.overlaps = false;
        blank.clear_borders = 0;
        all.push_back(blank);
      }
    }
    all.push_back(frame);
  }
  frames = std::move(all);
}

}  // namespace

AcrossExtent frame_across(const ExcessImage& image, const FrameSeries& series, AcrossExtent usual,
                          double slack_mm, double noise) {
  const double threshold = std::max(0.04, 0.5 * noise);
  return {strip_border(image, series, usual.begin_mm, -1.0, slack_mm, threshold),
          strip_border(image, series, usual.end_mm, +1.0, slack_mm, threshold)};
}

std::vector<FilmFrame> settle_frames(const FrameSeries& series, const FrameProfile& profile,
                                     AcrossExtent across, const FilmStrip& film) {
  std::vector<FilmFrame> frames;
  std::vector<double> gaps;
  for (const FrameSpan& span : series.frames) {
    double begin_share = 0.0;
    double end_share = 0.0;
    double begin = best_border(profile, Border::begin, span.begin_mm, begin_share);
    double end = best_border(profile, Border::end, span.end_mm, end_share);
    const bool begin_seen = begin_share >= seen_share;
    const bool end_seen = end_share >= seen_share;
    if (begin_seen && !end_seen) {
      end = begin + series.length_mm;
    } else if (end_seen && !begin_seen) {
      begin = end - series.length_mm;
    }
    if (!begin_seen && !end_seen && mean_ratio(profile, begin, end) < blank_ratio) {
      continue;
    }
    FilmFrame frame;
    frame.along_begin_mm = std::max(begin, film.along_begin_mm);
    frame.along_end_mm = std::min(end, film.along_end_mm);
    frame.across_begin_mm = std::max(across.begin_mm, film.across_begin_mm);
    frame.across_end_mm = std::min(across.end_mm, film.across_end_mm);
    frame.clear_borders =
        (begin_share >= sure_share && is_clear_outside(profile, Border::begin, begin) ? 1 : 0) +
        (end_share >= sure_share && is_clear_outside(profile, Border::end, end) ? 1 : 0);
    if (frame.along_end_mm - frame.along_begin_mm < least_visible_mm) {
      continue;
    }
    frame.cut = begin < film.along_begin_mm - cut_slack_mm ||
                end > film.along_end_mm + cut_slack_mm ||
                frame.across_begin_mm > across.begin_mm + cut_slack_mm ||
                frame.across_end_mm < across.end_mm - cut_slack_mm;
    if (!frames.empty()) {
      const double gap = frame.along_begin_mm - frames.back().along_end_mm;
      constexpr double sure_overlap_mm = 0.2;
      if (gap < -sure_overlap_mm) {
        frame.overlaps = frames.back().overlaps = true;
      } else if (gap < 0.3 * series.length_mm) {
        gaps.push_back(gap);
      }
    }
    frames.push_back(frame);
  }
  constexpr double usual_gap_share = 2.0 / 36.0;
  infer_blanks(frames, series.length_mm,
               gaps.empty() ? usual_gap_share * series.length_mm : median(gaps));
  return frames;
}

}  // namespace fogline
