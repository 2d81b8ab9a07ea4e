#include "film/wedges/wedge_row.h"

#include "film/wedges/find_wedges.h"
#include "numerics/robust.h"

#include <algorithm>
#include <cmath>
#include <numeric>
#include <optional>

namespace fogline {

namespace {

/// Places agree with an even pitch within this part of it.
constexpr double even_pitch_part = 0.12;
/// Steps found as patches are this much smaller on each side than they are (smoothing, gradient).
constexpr double patch_margin_px = 2.0;
/// A further step differs from its neighbour by so much in log light, at least and at most.
constexpr double least_rise = 0.006;
constexpr double greatest_rise = 1.2;
/// Both halves of a further step agree within this, or this part of the rise.
constexpr double even_level = 0.015;
constexpr double even_part_of_rise = 0.35;
/// A step ends at its sides: beyond them the level differs by so much.
constexpr double side_difference = 0.02;
/// ... and by this many of the levels' own scatter: dark places are noisy.
constexpr double noise_part = 1.5;
/// A step about as light as its neighbour, for dirt, is passed over to the one behind it.
constexpr double passed_over = 0.1;
/// Bare light is so much lighter than the last step: there the film ends.
constexpr double film_end_fall = 0.3;
/// A film ends this near to a whole number of steps, as a part of a pitch.
constexpr double whole_steps_part = 0.25;

/// Straight line through the patches' middles: direction of the row.
void fit_line(WedgeRow& row, const PatchChain& chain) {
  std::vector<cv::Point2d> middles;
  for (const EvenPatch& patch : chain.patches) {
    middles.emplace_back(patch.middle.x, patch.middle.y);
  }
  const cv::Point2d sum = std::accumulate(middles.begin(), middles.end(), cv::Point2d());
  const cv::Point2d mean = sum / static_cast<double>(middles.size());
  double cross = 0.0;
  double run = 0.0;
  for (const cv::Point2d& m : middles) {
    const double main = chain.vertical ? m.y - mean.y : m.x - mean.x;
    const double side = chain.vertical ? m.x - mean.x : m.y - mean.y;
    cross += main * side;
    run += main * main;
  }
  const double slope = cross / run;
  const cv::Point2d first = middles.front();
  const cv::Point2d last = middles.back();
  const double sign = (chain.vertical ? last.y - first.y : last.x - first.x) < 0.0 ? -1.0 : 1.0;
  const double norm = sign / std::hypot(1.0, slope);
  row.along = chain.vertical ? PointPx{slope * norm, norm} : PointPx{norm, slope * norm};
  row.across = {-row.along.y, row.along.x};
  const double place = (first.x - mean.x) * row.along.x + (first.y - mean.y) * row.along.y;
  row.origin = {mean.x + place * row.along.x, mean.y + place * row.along.y};
  for (const cv::Point2d& m : middles) {
    row.places.push_back((m.x - row.origin.x) * row.along.x + (m.y - row.origin.y) * row.along.y);
  }
}

/// Slots by an even pitch, and places as it says; false where the pitch isn't even.
bool fit_pitch(WedgeRow& row) {
  std::vector<double> gaps;
  for (std::size_t i = 1; i < row.places.size(); ++i) {
    gaps.push_back(row.places[i] - row.places[i - 1]);
  }
  const double least = *std::min_element(gaps.begin(), gaps.end());
  std::vector<double> single;
  std::copy_if(gaps.begin(), gaps.end(), std::back_inserter(single),
               [&](double gap) { return gap < 1.4 * least; });
  double pitch = median(single);
  row.slots.assign(1, 0);
  for (const double gap : gaps) {
    row.slots.push_back(row.slots.back() + std::max(1, static_cast<int>(std::lround(gap / pitch))));
  }
  // Least squares of place over slot.
  const auto count = static_cast<double>(row.places.size());
  const double mean_slot = std::accumulate(row.slots.begin(), row.slots.end(), 0.0) / count;
  const double mean_place = std::accumulate(row.places.begin(), row.places.end(), 0.0) / count;
  double cross = 0.0;
  double run = 0.0;
  for (std::size_t i = 0; i < row.places.size(); ++i) {
    cross += (row.slots[i] - mean_slot) * (row.places[i] - mean_place);
    run += (row.slots[i] - mean_slot) * (row.slots[i] - mean_slot);
  }
  pitch = cross / run;
  const double first = mean_place - pitch * mean_slot;
  for (std::size_t i = 0; i < row.places.size(); ++i) {
    if (std::abs(row.places[i] - first - pitch * row.slots[i]) > even_pitch_part * pitch) {
      return false;
    }
  }
  row.pitch = pitch;
  row.origin = row.at(first, 0.0);
  return true;
}

/// Levels of a part of the row; none where less than half of it lies in the picture.
std::vector<double> levels_at(const WedgeRow& row, const cv::Mat1f& smooth, double place,
                              double half_along, double aside, double half_across) {
  constexpr int samples = 9;
  std::vector<double> levels;
  for (int i = 0; i < samples; ++i) {
    for (int j = 0; j < samples; ++j) {
      const double a = half_along * (2.0 * i / (samples - 1) - 1.0);
      const double b = half_across * (2.0 * j / (samples - 1) - 1.0);
      const PointPx at = row.at(place + a, aside + b);
      const int x = static_cast<int>(std::floor(at.x));
      const int y = static_cast<int>(std::floor(at.y));
      if (x >= 0 && y >= 0 && x < smooth.cols && y < smooth.rows) {
        levels.push_back(static_cast<double>(smooth(y, x)));
      }
    }
  }
  if (2 * static_cast<int>(levels.size()) <= samples * samples) {
    levels.clear();
  }
  return levels;
}

/// Their median; absent where there are none.
std::optional<double> level_at(const WedgeRow& row, const cv::Mat1f& smooth, double place,
                               double half_along, double aside, double half_across) {
  const std::vector<double> levels = levels_at(row, smooth, place, half_along, aside, half_across);
  return levels.empty() ? std::nullopt : std::optional(median(levels));
}

/// True where film ends at the row's sides about a place, or nothing beside it is in the picture.
/// Bare light beyond the wedge goes on.
bool ends_at_sides(const WedgeRow& row, const cv::Mat1f& smooth, double place) {
  const double half = 0.3 * row.pitch;
  // Just within and just beyond the film's edge: stray light beside film changes more slowly.
  const double thin = 0.04 * row.size;
  int sides = 0;
  int ends = 0;
  for (const double side : {-1.0, 1.0}) {
    const std::vector<double> within =
        levels_at(row, smooth, place, half, side * 0.42 * row.size, thin);
    const std::vector<double> beside =
        levels_at(row, smooth, place, half, side * 0.6 * row.size, thin);
    if (within.empty() || beside.empty()) {
      continue;
    }
    ++sides;
    const LocationScale film = robust_location(within);
    const LocationScale other = robust_location(beside);
    const double noise = noise_part * std::max(film.scale, other.scale);
    ends += std::abs(film.location - other.location) > std::max(side_difference, noise) ? 1 : 0;
  }
  return sides == 0 || ends > 0;
}

/// True where the row shows an even step at a place, darker (`sign` 1) or lighter (-1) than its
/// neighbour of level `next`, that ends at the row's sides.
bool shows_step(const WedgeRow& row, const cv::Mat1f& smooth, double place, double next, int sign) {
  const double half = 0.3 * row.pitch;
  const double half_across = 0.33 * row.size;
  const auto level = level_at(row, smooth, place, half, 0.0, half_across);
  const auto before =
      level_at(row, smooth, place - 0.2 * row.pitch, 0.1 * row.pitch, 0.0, half_across);
  const auto after =
      level_at(row, smooth, place + 0.2 * row.pitch, 0.1 * row.pitch, 0.0, half_across);
  if (!level || !before || !after) {
    return false;
  }
  const double rise = sign * (*level - next);
  return rise >= least_rise && rise <= greatest_rise &&
         std::abs(*after - *before) <= std::max(even_level, even_part_of_rise * rise) &&
         ends_at_sides(row, smooth, place);
}

/// Bare light between the wedge and the picture's border may look like a first step.
void leave_bare_light_out(WedgeRow& row, const cv::Mat1f& smooth) {
  while (row.places.size() > 1 && !ends_at_sides(row, smooth, row.places.front())) {
    row.places.erase(row.places.begin());
    row.slots.erase(row.slots.begin());
  }
  const int first_slot = row.slots.front();
  const double first_place = row.places.front();
  row.origin = row.at(first_place, 0.0);
  for (std::size_t i = 0; i < row.places.size(); ++i) {
    row.places[i] -= first_place;
    row.slots[i] -= first_slot;
  }
}

/// The slot of the next step beyond `end`, or `end` where the row ends.
int next_slot(const WedgeRow& row, const cv::Mat1f& smooth, int end, int sign) {
  const double half = 0.3 * row.pitch;
  const double half_across = 0.33 * row.size;
  const auto here = level_at(row, smooth, row.pitch * end, half, 0.0, half_across);
  if (!here) {
    return end;
  }
  const auto shown = [&](int slot) {
    return shows_step(row, smooth, row.pitch * slot, *here, sign);
  };
  if (shown(end + sign)) {
    return end + sign;
  }
  const auto between = level_at(row, smooth, row.pitch * (end + sign), half, 0.0, half_across);
  const bool alike = between && std::abs(*between - *here) < passed_over;
  return alike && shown(end + 2 * sign) ? end + 2 * sign : end;
}

void extend(WedgeRow& row, const cv::Mat1f& smooth) {
  int first = row.slots.front();
  int last = row.slots.back();
  for (const int sign : {-1, 1}) {
    int& end = sign < 0 ? first : last;
    for (int next = next_slot(row, smooth, end, sign);
         next != end && last - first + 1 < most_wedge_steps;
         next = next_slot(row, smooth, end, sign)) {
      end = next;
    }
  }
  const int count = last - first + 1;
  row.slots.resize(static_cast<std::size_t>(count));
  std::iota(row.slots.begin(), row.slots.end(), 0);
  row.origin = row.at(row.pitch * first, 0.0);
  row.places.clear();
  for (const int slot : row.slots) {
    row.places.push_back(row.pitch * slot);
  }
}

/// How many steps too dark to be told apart lie between the last one and the end of the film, where
/// bare light shows it and it is a whole number.
std::optional<int> unseen_dark_steps(const WedgeRow& row, const cv::Mat1f& smooth) {
  constexpr int parts = 20;
  const double thin = row.pitch / parts;
  const double half_across = 0.25 * row.size;
  const double last = row.places.back();
  const auto dark = level_at(row, smooth, last, 0.2 * row.pitch, 0.0, half_across);
  for (int i = 0; dark && i < parts * most_wedge_steps; ++i) {
    const auto level = level_at(row, smooth, last + i * thin, 0.5 * thin, 0.0, half_across);
    if (!level) {
      break;
    }
    if (*level < *dark - film_end_fall) {
      const double steps = static_cast<double>(i) / parts - 0.5;
      const double whole = std::max(0.0, std::round(steps));
      return std::abs(steps - whole) < whole_steps_part ? std::optional(static_cast<int>(whole))
                                                        : std::nullopt;
    }
  }
  return std::nullopt;
}

/// Steps touch where between two of them nothing else shows: neither a gap nor a joint.
bool steps_touch(const WedgeRow& row, const cv::Mat1f& smooth) {
  int apart = 0;
  const double half_across = 0.3 * row.size;
  for (std::size_t i = 1; i < row.places.size(); ++i) {
    const double thin = 0.06 * (row.places[i] - row.places[i - 1]);
    const double middle = 0.5 * (row.places[i] + row.places[i - 1]);
    const auto between = level_at(row, smooth, middle, thin, 0.0, half_across);
    const auto a = level_at(row, smooth, row.places[i - 1], thin, 0.0, half_across);
    const auto b = level_at(row, smooth, row.places[i], thin, 0.0, half_across);
    constexpr double margin = 0.03;
    apart += between && a && b &&
                     (*between < std::min(*a, *b) - margin || *between > std::max(*a, *b) + margin)
                 ? 1
                 : 0;
  }
  return 2 * apart < static_cast<int>(row.places.size());
}

}  // namespace

WedgeRow lay_row(const PatchChain& chain, const cv::Mat1f& smooth) {
  WedgeRow row;
  std::vector<double> lengths;
  std::vector<double> sizes;
  for (const EvenPatch& patch : chain.patches) {
    lengths.push_back((chain.vertical ? patch.height : patch.width) + 2.0 * patch_margin_px);
    sizes.push_back((chain.vertical ? patch.width : patch.height) + 2.0 * patch_margin_px);
  }
  row.length = median(lengths);
  row.size = median(sizes);
  fit_line(row, chain);
  if (fit_pitch(row)) {
    leave_bare_light_out(row, smooth);
    extend(row, smooth);
    row.length = std::min(row.length, row.pitch);
  } else {
    row.slots.resize(row.places.size());
    std::iota(row.slots.begin(), row.slots.end(), 0);
  }
  row.touching = steps_touch(row, smooth);
  if (row.touching && row.pitch > 0.0) {
    row.unseen_dark_steps = unseen_dark_steps(row, smooth);
  }
  return row;
}

}  // namespace fogline
