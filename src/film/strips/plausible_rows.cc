#include "film/strips/plausible_rows.h"

#include "film/film_layout.h"
#include "numerics/robust.h"

#include <algorithm>
#include <cmath>

namespace fogline {

namespace {

/// Holes are the brightest thing near them: their light may lie so far (log) below the brightest.
constexpr double hole_light_slack = 0.08;
/// A hole is 2.794 mm across on a pitch of 4.750; blur and the strip's turn may add a fifth, a
/// holder only takes away.
constexpr double greatest_across_share = 1.22 * film_135::hole_across_mm / film_135::pitch_mm;
/// Among the rows of one scan all see the same lamp: a row darker than the brightest by more (log
/// light) is made of windows in a picture. Lamps and lenses fall off by less.
constexpr double same_lamp_slack = 0.15;

double value_at(const FindingImage& image, const HoleRow& row, double along, double across) {
  const int x = static_cast<int>(std::floor(row.along_x ? along : across));
  const int y = static_cast<int>(std::floor(row.along_x ? across : along));
  if (x < 0 || y < 0 || x >= image.log_light.cols || y >= image.log_light.rows) {
    return NAN;
  }
  return static_cast<double>(image.log_light(y, x));
}

/// Holes of one row show one lamp through one kind of hole, and clear film lies between them:
/// their light agrees, and so does the light between them, which is darker.
bool is_uniform(const FindingImage& image, const HoleRow& row) {
  std::vector<double> holes;
  std::vector<double> between;
  for (const RowHole& hole : row.holes) {
    const double along = row.along(hole.spot);
    holes.push_back(hole.spot.level);
    const double light = value_at(image, row, along + 0.5 * row.pitch_px, row.across(hole.spot));
    if (!std::isnan(light)) {
      between.push_back(light);
    }
  }
  constexpr double hole_scatter = 0.05;
  constexpr double least_step = 0.006;
  return robust_location(holes).scale < hole_scatter &&
         median(between) > median(holes) + least_step;
}

bool is_bright_enough(const FindingImage& image, const HoleRow& row) {
  // Between the holes and to both sides, out to a pitch: nothing there may be much brighter.
  std::vector<double> near;
  for (double offset_mm = -film_135::pitch_mm; offset_mm <= film_135::pitch_mm; offset_mm += 0.5) {
    const std::vector<double> line = line_values(image, row, offset_mm);
    near.insert(near.end(), line.begin(), line.end());
  }
  constexpr double brightest_share = 0.02;
  return hole_level(row) < percentile(near, brightest_share) + hole_light_slack;
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
  std::erase_if(rows,
                [&](const HoleRow& row) { return hole_level(row) > brightest + same_lamp_slack; });
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
