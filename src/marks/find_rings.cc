// Drying rings: a drop's edge dries last and leaves a denser, crisp rim, 0.02 to 0.15 and 0.2 to
// 0.8 mm broad, round outlines 3 to 15 mm across, drawn out along the hanging film (common
// practice, no source).
//
// About every place of a coarse lattice the closed outline is found that gathers most of what
// stands out as a thin denser line. A ring is told only where the rim shows nearly all the way
// round, at nearly one height, above both its sides: pictures hold many lines, but few closed ones.

#include "marks/find_rings.h"

#include "marks/local_scale.h"
#include "marks/ridge.h"
#include "marks/ring_path.h"

#include <algorithm>
#include <cmath>
#include <numbers>
#include <numeric>
#include <vector>

#include <opencv2/imgproc.hpp>

namespace fogline {

namespace {

/// Middles tried.
constexpr double lattice_mm = 1.0;
/// Evidence of one pixel, in what lines of grain and picture give, counts up to this.
constexpr float most_evidence = 4.0F;
/// Evidence that a direction must show to count as seen.
constexpr double seen_evidence = 1.3;
constexpr double least_seen = 0.5;
/// Mean evidence an outline needs to be looked at closely.
constexpr double worth_a_look = 1.6;

struct Rim {
  double seen = 0.0;    ///< share of directions in which it shows
  double height = 0.0;  ///< median over the directions
  double spread = 0.0;  ///< middle half of the heights over their median
  double alone = 0.0;   ///< evidence on the outline over that a little inside and outside
  double usable = 0.0;  ///< share of directions on usable film
};

double quantile(std::vector<double> values, double share) {
  const auto rank = static_cast<std::ptrdiff_t>(share * static_cast<double>(values.size() - 1));
  std::nth_element(values.begin(), values.begin() + rank, values.end());
  return values[static_cast<std::size_t>(rank)];
}

double value_at(const cv::Mat1f& image, cv::Point2d at) {
  const int x = std::clamp(static_cast<int>(std::floor(at.x)), 0, image.cols - 1);
  const int y = std::clamp(static_cast<int>(std::floor(at.y)), 0, image.rows - 1);
  return static_cast<double>(image(y, x));
}

/// Reads the rim along an outline, from the density smoothed over two pixels.
Rim read_rim(const RingPath& path, const MarkTile& tile, const cv::Mat1f& smooth,
             const LineEvidence& evidence, double rim_mm) {
  const double off = 1.6 * rim_mm * tile.pixels_per_mm;
  std::vector<double> heights;
  double on_rim = 0.0;
  double beside = 0.0;
  int usable = 0;
  int seen = 0;
  for (int d = 0; d < ring_directions; ++d) {
    const cv::Point2d at = path.point(d);
    const int x = static_cast<int>(at.x);
    const int y = static_cast<int>(at.y);
    if (x < 0 || y < 0 || x >= smooth.cols || y >= smooth.rows || tile.usable(y, x) == 0) {
      continue;
    }
    ++usable;
    const cv::Point2d out = (at - path.middle) * (off / path.radius[static_cast<std::size_t>(d)]);
    const double rim = value_at(smooth, at);
    const double height = rim - std::max(value_at(smooth, at + out), value_at(smooth, at - out));
    heights.push_back(height);
    const double angle = 4.0 * std::numbers::pi * d / ring_directions;
    const auto here = static_cast<double>(evidence.toward(x, y, static_cast<float>(std::cos(angle)),
                                                          static_cast<float>(std::sin(angle))));
    on_rim += here;
    for (const double far : {-2.0, -1.0, 1.0, 2.0}) {
      beside += 0.25 * value_at(evidence.strength, at + far * out);
    }
    seen += here >= seen_evidence && height > 0.0 ? 1 : 0;
  }
  Rim result;
  result.usable = static_cast<double>(usable) / ring_directions;
  if (usable < ring_directions / 2) {
    return result;
  }
  result.seen = static_cast<double>(seen) / usable;
  result.height = quantile(heights, 0.5);
  result.spread =
      (quantile(heights, 0.75) - quantile(heights, 0.25)) / std::max(1e-4, std::abs(result.height));
  result.alone = on_rim / std::max(1e-3, on_rim + beside);
  return result;
}

ClosedLine closed_line(const RingPath& path, const Rim& rim, const MarkTile& tile, double rim_mm) {
  ClosedLine line;
  MarkCandidate& mark = line.mark;
  mark.kind = MarkKind::drying_mark;
  double left = INFINITY;
  double top = INFINITY;
  double right = 0.0;
  double bottom = 0.0;
  std::vector<cv::Point2f> outline;
  for (int d = 0; d < ring_directions; ++d) {
    const cv::Point2d at = path.point(d);
    left = std::min(left, at.x);
    right = std::max(right, at.x);
    top = std::min(top, at.y);
    bottom = std::max(bottom, at.y);
    outline.emplace_back(at);
  }
  const double half_rim = 0.5 * rim_mm * tile.pixels_per_mm;
  const PointMm begin = tile.film(left - half_rim, top - half_rim);
  const PointMm end = tile.film(right + half_rim, bottom + half_rim);
  mark.extent = {begin.along_mm, end.along_mm, begin.across_mm, end.across_mm};
  mark.middle = tile.film(0.5 * (left + right), 0.5 * (top + bottom));
  mark.area_mm2 = cv::contourArea(outline) / (tile.pixels_per_mm * tile.pixels_per_mm);
  mark.size_mm = std::max(end.along_mm - begin.along_mm, end.across_mm - begin.across_mm);
  mark.contrast_density = rim.height;
  mark.width_mm = rim_mm;
  const double mean_radius_px =
      std::accumulate(path.radius.begin(), path.radius.end(), 0.0) / ring_directions;
  // A rim in pieces has heights of any spread: more of it says no more.
  constexpr double most_spread = 4.0;
  line.signs = {rim.seen,
                std::min(rim.spread, most_spread),
                rim.alone,
                mean_radius_px / tile.pixels_per_mm,
                path.sum / ring_directions,
                0.0};
  return line;
}

/// How much each pixel speaks for a thin denser line, over what its neighbourhood usually does.
LineEvidence line_evidence(const MarkTile& tile, double rim_mm) {
  constexpr double block_mm = 9.0;
  const double width_px = rim_mm * tile.pixels_per_mm;
  // Of the answers of all pixels the high percentile is what texture gives; a ring's own rim covers
  // less than a twelfth of such a square.
  const int sides_px = static_cast<int>(std::ceil(1.5 * width_px));
  const cv::Mat1b usable = inner_usable(tile.usable, sides_px, sides_px);
  const cv::Mat1f heights = ridge_heights(tile.density, width_px, 1);
  const cv::Mat1f scale =
      local_scale(heights, usable, static_cast<int>(block_mm * tile.pixels_per_mm), 0.88);
  const Ridge ridge = ridge_crests(tile.density, width_px, 1, cv::Mat1b(heights > 0.0F));
  LineEvidence evidence{cv::Mat1f(scale.size(), 0.0F), cv::Mat1f(scale.size(), 0.0F),
                        cv::Mat1f(scale.size(), 0.0F)};
  for (int y = 0; y < scale.rows; ++y) {
    for (int x = 0; x < scale.cols; ++x) {
      if (ridge.height(y, x) > 0.0F && usable(y, x) != 0) {
        const float strength = std::min(most_evidence, ridge.height(y, x) / scale(y, x));
        evidence.strength(y, x) = strength;
        evidence.cosine(y, x) = strength * std::cos(2.0F * ridge.across(y, x));
        evidence.sine(y, x) = strength * std::sin(2.0F * ridge.across(y, x));
      }
    }
  }
  // A path of whole pixels mustn't miss a crest one pixel beside it: spread across, at the height
  // of a line's own crest.
  constexpr double sd_px = 0.8;
  constexpr double line_crest = 2.0;
  for (cv::Mat1f* part : {&evidence.strength, &evidence.cosine, &evidence.sine}) {
    cv::GaussianBlur(*part, *part, {}, sd_px);
    *part *= line_crest;
  }
  return evidence;
}

/// The best outline about a place, drawn again about its own middle, where lines meet it squarely.
std::optional<RingPath> centred_ring(const LineEvidence& evidence, cv::Point2d middle,
                                     double pixels_per_mm, const RingKnowledge& knowledge) {
  const double least = knowledge.least_radius_mm * pixels_per_mm;
  const double most = knowledge.most_radius_mm * pixels_per_mm;
  constexpr double least_sum = worth_a_look * ring_directions;
  std::optional<RingPath> path = best_ring(evidence, middle, least, most, least_sum);
  constexpr int rounds = 2;
  for (int round = 0; path && round < rounds; ++round) {
    cv::Point2d sum;
    for (int d = 0; d < ring_directions; ++d) {
      sum += path->point(d);
    }
    path = best_ring(evidence, sum / ring_directions, least, most, least_sum);
  }
  return path;
}

bool overlap(const FilmExtent& a, const FilmExtent& b) {
  return std::min(a.along_end_mm, b.along_end_mm) > std::max(a.along_begin_mm, b.along_begin_mm) &&
         std::min(a.across_end_mm, b.across_end_mm) >
             std::max(a.across_begin_mm, b.across_begin_mm);
}

/// Whether two lines are of one size along and across.
bool same_size(const FilmExtent& a, const FilmExtent& b) {
  // A ring met from two places differs by less, two drops hardly ever by so little.
  constexpr double most_off = 0.08;
  const auto alike = [](double one, double other) {
    return std::abs(one / other - 1.0) < most_off;
  };
  return alike(a.along_end_mm - a.along_begin_mm, b.along_end_mm - b.along_begin_mm) &&
         alike(a.across_end_mm - a.across_begin_mm, b.across_end_mm - b.across_begin_mm);
}

/// How many other lines of a line's size there are, each counted once.
double twins_of(const ClosedLine& line, const std::vector<ClosedLine>& all) {
  // A row of three or more is no chance.
  constexpr std::size_t most_twins = 3;
  std::vector<FilmExtent> twins;
  for (const ClosedLine& other : all) {
    const FilmExtent& extent = other.mark.extent;
    const bool counted = std::any_of(twins.begin(), twins.end(),
                                     [&](const FilmExtent& twin) { return overlap(twin, extent); });
    if (!counted && !overlap(extent, line.mark.extent) && same_size(extent, line.mark.extent)) {
      twins.push_back(extent);
      if (twins.size() == most_twins) {
        break;
      }
    }
  }
  return static_cast<double>(twins.size());
}

}  // namespace

double ring_log_odds(const RingSigns& signs, const RingScore& score) {
  return score.constant + score.seen * signs.seen + score.spread * signs.spread +
         score.alone * signs.alone + score.log_radius * std::log(signs.mean_radius_mm) +
         score.evidence * signs.mean_evidence + score.twins * signs.twins;
}

std::vector<ClosedLine> closed_lines(const MarkTile& tile, const RingKnowledge& knowledge) {
  const LineEvidence evidence = line_evidence(tile, knowledge.rim_mm);
  cv::Mat1f smooth;
  cv::GaussianBlur(tile.density, smooth, {}, 0.8);
  const double lattice = lattice_mm * tile.pixels_per_mm;
  std::vector<ClosedLine> lines;
  for (double y = lattice; y < tile.density.rows; y += lattice) {
    for (double x = lattice; x < tile.density.cols; x += lattice) {
      const auto path = centred_ring(evidence, {x, y}, tile.pixels_per_mm, knowledge);
      if (!path) {
        continue;
      }
      const Rim rim = read_rim(*path, tile, smooth, evidence, knowledge.rim_mm);
      constexpr double least_usable = 0.6;
      if (rim.usable >= least_usable && rim.seen >= least_seen &&
          rim.height >= knowledge.least_rim_density && rim.height <= knowledge.most_rim_density) {
        lines.push_back(closed_line(*path, rim, tile, knowledge.rim_mm));
      }
    }
  }
  for (ClosedLine& line : lines) {
    line.signs.twins = twins_of(line, lines);
  }
  return lines;
}

std::vector<MarkCandidate> find_rings(const MarkTile& tile, const RingKnowledge& knowledge) {
  std::vector<MarkCandidate> rings;
  for (const ClosedLine& line : closed_lines(tile, knowledge)) {
    rings.push_back(line.mark);
    rings.back().log_odds = ring_log_odds(line.signs, knowledge.score);
  }
  return rings;
}

}  // namespace fogline
