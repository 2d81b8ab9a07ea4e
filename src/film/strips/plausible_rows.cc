#include "film/strips/plausible_rows.h"

#include "film/film_layout.h"
#include "numerics/least_squares.h"
#include "numerics/robust.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <span>

namespace fogline {

namespace {

/// Holes are the brightest thing near them: their light may lie so far (log) below the brightest.
constexpr double hole_light_slack = 0.08;
/// A hole is 2.794 mm across on a pitch of 4.750; blur and the strip's turn may add a fifth, a
/// holder only takes away.
constexpr double greatest_across_share = 1.22 * film_135::hole_across_mm / film_135::pitch_mm;
/// Among the rows of one scan all see the same lamp: a row darker than the brightest by more (log
/// light) is made of windows in a picture. Lamps and lenses fall off by less, but for makeshift
/// ones (4:1), and then the holes' shape must speak for them.
constexpr double same_lamp_slack = 0.15;
constexpr double makeshift_lamp_slack = 0.6;

/// Inner edge of one row to inner edge of the other, in pitches, and how far perspective, blur and
/// the level of the cut may change it.
constexpr double inner_distance_pitches =
    2.0 * (film_135::row_across_mm - film_135::hole_across_mm / 2.0) / film_135::pitch_mm;
constexpr double inner_distance_slack = 0.06;

double value_at(const FindingImage& image, const HoleRow& row, double along, double across) {
  const int x = static_cast<int>(std::floor(row.along_x ? along : across));
  const int y = static_cast<int>(std::floor(row.along_x ? across : along));
  if (x < 0 || y < 0 || x >= image.log_light.cols || y >= image.log_light.rows) {
    return NAN;
  }
  return static_cast<double>(image.log_light(y, x));
}

/// What is left of values along a row when the lamp's smooth course along it is taken out.
std::vector<double> without_course(const std::vector<double>& along,
                                   const std::vector<double>& values) {
  // A lens falls off by a square; fewer holes bear a straight course or none. Noise of a hole's
  // light is never taken for a misfit.
  constexpr int holes_a_term = 3;
  const int terms = std::clamp(static_cast<int>(values.size()) / holes_a_term, 1, 3);
  constexpr double scatter_floor = 0.01;
  LinearProblem problem;
  problem.coefficients = terms;
  std::vector<std::array<double, 3>> rows;
  const double length = std::max(1.0, along.back() - along.front());
  for (std::size_t i = 0; i < values.size(); ++i) {
    const double s = (along[i] - along.front()) / length;
    rows.push_back({1.0, s, s * s});
    problem.add(std::span(rows.back().data(), static_cast<std::size_t>(terms)), values[i]);
  }
  const LinearFit course = fit_robust(problem, scatter_floor);
  std::vector<double> left = values;
  for (std::size_t i = 0; i < left.size() && course.solved; ++i) {
    left[i] -= course.predict(std::span(rows[i].data(), static_cast<std::size_t>(terms)));
  }
  return left;
}

/// Holes of one row show one lamp through one kind of hole, and clear film lies between them: but
/// for the lamp's course their light agrees, and the film beside each is darker.
bool is_uniform(const FindingImage& image, const HoleRow& row) {
  std::vector<double> places;
  std::vector<double> holes;
  std::vector<double> steps;
  for (const RowHole& hole : row.holes) {
    const double along = row.along(hole.spot);
    places.push_back(along);
    holes.push_back(hole.spot.level);
    const double between = value_at(image, row, along + 0.5 * row.pitch_px, row.across(hole.spot));
    if (!std::isnan(between)) {
      steps.push_back(between - hole.spot.level);
    }
  }
  constexpr double hole_scatter = 0.05;
  constexpr double least_step = 0.006;
  return robust_location(without_course(places, holes)).scale < hole_scatter &&
         median(steps) > least_step;
}

/// Between the holes and to both sides, out to a pitch: nothing near a hole may be much brighter.
bool is_bright_enough(const FindingImage& image, const HoleRow& row) {
  constexpr double brightest_share = 0.02;
  std::vector<double> darker_by;
  for (const RowHole& hole : row.holes) {
    std::vector<double> near;
    const double pitch = row.pitch_px;
    for (double off_along = -pitch; off_along <= pitch; off_along += 0.1 * pitch) {
      for (double off_across = -pitch; off_across <= pitch; off_across += 0.1 * pitch) {
        const double value = value_at(image, row, row.along(hole.spot) + off_along,
                                      row.across(hole.spot) + off_across);
        if (!std::isnan(value)) {
          near.push_back(value);
        }
      }
    }
    darker_by.push_back(hole.spot.level - percentile(near, brightest_share));
  }
  return median(darker_by) < hole_light_slack;
}

/// Whether sizes and pitch stand to each other as on film: few rows of windows in a picture do.
bool has_film_proportions(const HoleRow& row) {
  // With fewer, chance may make sizes agree; blur and the level of the cut change them by a
  // seventh.
  constexpr std::size_t enough_holes = 6;
  constexpr double slack = 0.15;
  std::vector<double> lengths;
  for (const RowHole& hole : row.holes) {
    lengths.push_back(row.along_size(hole.spot));
  }
  const double length = median(lengths);
  constexpr double aspect = film_135::hole_across_mm / film_135::hole_along_mm;
  constexpr double pitches = film_135::pitch_mm / film_135::hole_along_mm;
  return row.holes.size() >= enough_holes &&
         std::abs(row.median_across_size() / length / aspect - 1.0) < slack &&
         std::abs(row.pitch_px / length / pitches - 1.0) < slack;
}

/// Whether two rows belong to one strip, whichever lies first.
bool are_partners(const HoleRow& one, const HoleRow& two) {
  const double along = one.along(one.holes.front().spot);
  const bool one_is_low = one.across_at(along) < two.across_at(along);
  const HoleRow& low = one_is_low ? one : two;
  const HoleRow& high = one_is_low ? two : one;
  return are_pair(low, high);
}

std::vector<HoleRow> plausible_along(const FindingImage& image,
                                     const std::vector<BrightSpot>& spots, bool along_x) {
  std::vector<HoleRow> rows = hole_rows(spots, along_x);
  std::erase_if(rows, [&](const HoleRow& row) {
    return !is_bright_enough(image, row) || !is_uniform(image, row) ||
           row.median_across_size() > greatest_across_share * row.pitch_px;
  });
  double brightest = INFINITY;
  for (const HoleRow& row : rows) {
    brightest = std::min(brightest, hole_level(row));
  }
  const std::vector<HoleRow> all = rows;
  const auto sees_lamp = [&](const HoleRow& row) {
    return hole_level(row) <= brightest + same_lamp_slack;
  };
  const auto completes_strip = [&](const HoleRow& row) {
    return has_film_proportions(row) && hole_level(row) <= brightest + makeshift_lamp_slack &&
           std::any_of(all.begin(), all.end(), [&](const HoleRow& other) {
             return sees_lamp(other) && are_partners(row, other);
           });
  };
  std::erase_if(rows, [&](const HoleRow& row) { return !sees_lamp(row) && !completes_strip(row); });
  // The scale that most holes agree on.
  std::vector<double> pitches;
  for (const HoleRow& row : rows) {
    pitches.insert(pitches.end(), row.holes.size(), row.pitch_px);
  }
  const double common = median(pitches);
  std::erase_if(rows, [&](const HoleRow& row) {
    return std::abs(row.pitch_px - common) > same_scale_share * common;
  });
  return rows;
}

double mean_level(const std::vector<HoleRow>& rows) {
  std::vector<double> levels;
  for (const HoleRow& row : rows) {
    levels.insert(levels.end(), row.holes.size(), hole_level(row));
  }
  return median(levels);
}

std::size_t holes_in(const std::vector<HoleRow>& rows) {
  std::size_t count = 0;
  for (const HoleRow& row : rows) {
    count += row.holes.size();
  }
  return count;
}

/// Rows along the axis on which the film runs: the brighter ones where the two axes differ in
/// light (real holes show the lamp), else the more numerous.
const std::vector<HoleRow>& likelier_rows(const std::vector<HoleRow>& a,
                                          const std::vector<HoleRow>& b) {
  if (!a.empty() && !b.empty() && std::abs(mean_level(a) - mean_level(b)) > same_lamp_slack) {
    return mean_level(a) < mean_level(b) ? a : b;
  }
  return holes_in(a) >= holes_in(b) ? a : b;
}

}  // namespace

bool are_pair(const HoleRow& low, const HoleRow& high) {
  const double begin =
      std::max(low.along(low.holes.front().spot), high.along(high.holes.front().spot));
  const double end = std::min(low.along(low.holes.back().spot), high.along(high.holes.back().spot));
  const double pitch = 0.5 * (low.pitch_px + high.pitch_px);
  if (end - begin < pitch || std::abs(low.pitch_px - high.pitch_px) > same_scale_share * pitch) {
    return false;
  }
  constexpr std::size_t fewest_holes_together = 8;
  if (low.holes.size() + high.holes.size() < fewest_holes_together) {
    return false;
  }
  const double middle = 0.5 * (begin + end);
  const double inner = high.across_at(middle) - low.across_at(middle) -
                       0.5 * (low.median_across_size() + high.median_across_size());
  return std::abs(inner / pitch / inner_distance_pitches - 1.0) < inner_distance_slack;
}

double mm_per_px(const HoleRow& row) {
  return film_135::pitch_mm / row.pitch_px;
}

double hole_level(const HoleRow& row) {
  std::vector<double> levels;
  for (const RowHole& hole : row.holes) {
    levels.push_back(hole.spot.level);
  }
  return median(levels);
}

std::vector<double> line_values(const FindingImage& image, const HoleRow& row, double offset_mm) {
  std::vector<double> values;
  const double offset_px = offset_mm / mm_per_px(row);
  const double begin = row.along(row.holes.front().spot);
  const double end = row.along(row.holes.back().spot);
  const double slope = (row.across_at(end) - row.across_at(begin)) / (end - begin);
  const double middle = row.across_at(begin);
  for (double along = begin; along <= end; along += 0.25 * row.pitch_px) {
    const double value = value_at(image, row, along, middle + slope * (along - begin) + offset_px);
    if (!std::isnan(value)) {
      values.push_back(value);
    }
  }
  return values;
}

std::vector<HoleRow> plausible_rows(const FindingImage& image) {
  const std::vector<BrightSpot> spots = bright_spots(image);
  return likelier_rows(plausible_along(image, spots, true), plausible_along(image, spots, false));
}

}  // namespace fogline
