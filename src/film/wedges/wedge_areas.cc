#include "film/wedges/wedge_areas.h"

#include "numerics/robust.h"

#include <algorithm>
#include <cmath>
#include <vector>

#include <opencv2/imgproc.hpp>

namespace fogline {

namespace {

/// Part of a step that is read, along and across: a fifth is left out on each side.
constexpr double read_part = 0.6;
/// Most samples along one side of an area.
constexpr double most_samples = 240.0;
constexpr int parts = 4;
/// The middle of half of the samples scatters by so much more than the mean of all would.
constexpr double middle_scatter = 1.2;
/// What a grid pixel counts whose bit says "some of its stored pixels" (as where densities are
/// read): more than none, less than half.
constexpr double some_share = 0.25;
/// Bare light is even and within this of the brightest.
constexpr double bare_range = 0.02;
constexpr float bare_unevenness = 0.03F;
/// It must be brighter than the lightest step by so much in log light.
constexpr double above_lightest = 0.005;
constexpr double least_bare_radius_px = 2.0;
/// The smoothed edge of the film reaches so far into the bare light beside it.
constexpr double film_edge_px = 3.0;

/// Mean of the middle half: hardly moved by dust, and finer than the codes' own steps.
double interquartile_mean(std::vector<double>& values) {
  const auto count = static_cast<std::ptrdiff_t>(values.size());
  if (count == 0) {
    return NAN;
  }
  const std::ptrdiff_t low = count / 4;
  const std::ptrdiff_t high = count - low;
  std::nth_element(values.begin(), values.begin() + low, values.end());
  std::nth_element(values.begin() + low, values.begin() + (high - 1), values.end());
  double sum = 0.0;
  for (std::ptrdiff_t i = low; i < high; ++i) {
    sum += values[static_cast<std::size_t>(i)];
  }
  return sum / static_cast<double>(high - low);
}

struct AreaReading {
  PerChannel<double> light{};
  PerChannel<double> doubt{};
  PerChannel<double> clipped{};
};

/// Reads a four-sided area of the grid, corners clockwise from top left in stored pixels.
AreaReading read_area(const ScanGrid& grid, const std::array<PointPx, 4>& corners) {
  const PointPx right{corners[1].x - corners[0].x, corners[1].y - corners[0].y};
  const PointPx down{corners[3].x - corners[0].x, corners[3].y - corners[0].y};
  const auto samples_of = [&](const PointPx& side) {
    const double length = std::hypot(side.x, side.y) / grid.reduction;
    return std::max(parts, static_cast<int>(std::min(most_samples, length)));
  };
  const int columns = samples_of(right);
  const int rows = samples_of(down);
  const int channels = grid.light.channels();
  constexpr std::size_t part_count = std::size_t{parts} * parts;
  std::array<std::array<std::vector<double>, part_count>, most_channels> values;
  PerChannel<double> clipped{};
  int count = 0;
  for (int j = 0; j < rows; ++j) {
    for (int i = 0; i < columns; ++i) {
      const double a = (i + 0.5) / columns;
      const double b = (j + 0.5) / rows;
      const int x = static_cast<int>((corners[0].x + a * right.x + b * down.x) / grid.reduction);
      const int y = static_cast<int>((corners[0].y + a * right.y + b * down.y) / grid.reduction);
      if (!grid.clipped.contains(x, y)) {
        continue;
      }
      ++count;
      const int place = j * parts / rows * parts + i * parts / columns;
      const auto part = static_cast<std::size_t>(place);
      const std::uint8_t bits = grid.clipped.at(x, y);
      for (int c = 0; c < channels; ++c) {
        const auto k = static_cast<std::size_t>(c);
        values[k][part].push_back(static_cast<double>(grid.light.light(x, y, c)));
        const bool most = (bits >> (c + 4) & 1) != 0;
        const bool some = (bits >> c & 1) != 0;
        clipped[k] += most ? 1.0 : some ? some_share : 0.0;
      }
    }
  }
  AreaReading reading;
  for (std::size_t c = 0; c < static_cast<std::size_t>(channels); ++c) {
    std::vector<double> all;
    std::vector<double> of_part;
    for (std::vector<double>& part : values[c]) {
      all.insert(all.end(), part.begin(), part.end());
      if (!part.empty()) {
        of_part.push_back(interquartile_mean(part));
      }
    }
    reading.light[c] = interquartile_mean(all);
    reading.doubt[c] = middle_scatter * robust_location(of_part).scale / parts;
    reading.clipped[c] = count > 0 ? clipped[c] / count : 0.0;
  }
  return reading;
}

/// Corners of an area of the row, clockwise from top left, in stored pixels.
std::array<PointPx, 4> corners_of(const WedgeRow& row, double place, double half_along,
                                  double half_across, double scan_px) {
  std::array<PointPx, 4> corners{
      row.at(place - half_along, -half_across), row.at(place + half_along, -half_across),
      row.at(place + half_along, half_across), row.at(place - half_along, half_across)};
  for (PointPx& corner : corners) {
    corner = {corner.x * scan_px, corner.y * scan_px};
  }
  // A row never lies on the diagonal, so the top left corner has the least x + y.
  auto* const first =
      std::min_element(corners.begin(), corners.end(),
                       [](const PointPx& a, const PointPx& b) { return a.x + a.y < b.x + b.y; });
  std::rotate(corners.begin(), first, corners.end());
  if (corners[1].x - corners[0].x < corners[3].x - corners[0].x) {
    std::swap(corners[1], corners[3]);
  }
  return corners;
}

/// Blackens the row itself, with a margin, in a mask of bare light.
void leave_row_out(cv::Mat1b& mask, const WedgeRow& row) {
  const double begin = row.places.front() - 0.75 * row.length;
  const double end = row.places.back() + 0.75 * row.length;
  const double half = 0.5 * row.size + film_edge_px;
  std::vector<cv::Point> outline;
  for (const PointPx& corner :
       {row.at(begin, -half), row.at(end, -half), row.at(end, half), row.at(begin, half)}) {
    outline.emplace_back(static_cast<int>(corner.x), static_cast<int>(corner.y));
  }
  cv::fillPoly(mask, std::vector<std::vector<cv::Point>>{outline}, cv::Scalar(0));
}

/// The place in a distance map that is at least half as far inside as any, nearest to the row.
cv::Point nearest_wide_place(const cv::Mat1f& inside, const WedgeRow& row) {
  double widest = 0.0;
  cv::minMaxLoc(inside, nullptr, &widest);
  const PointPx middle = row.at(0.5 * (row.places.front() + row.places.back()), 0.0);
  cv::Point best(-1, -1);
  double nearest = INFINITY;
  for (int y = 0; y < inside.rows; ++y) {
    for (int x = 0; x < inside.cols; ++x) {
      const double distance = std::hypot(x - middle.x, y - middle.y);
      if (static_cast<double>(inside(y, x)) >= std::max(0.5 * widest, least_bare_radius_px) &&
          distance < nearest) {
        nearest = distance;
        best = {x, y};
      }
    }
  }
  return best;
}

}  // namespace

std::vector<WedgeStep> read_steps(const ScanGrid& grid, const WedgeRow& row, double scan_px) {
  std::vector<WedgeStep> steps;
  for (std::size_t i = 0; i < row.places.size(); ++i) {
    WedgeStep step;
    step.corners_px = corners_of(row, row.places[i], 0.5 * read_part * row.length,
                                 0.5 * read_part * row.size, scan_px);
    const AreaReading reading = read_area(grid, step.corners_px);
    step.light = reading.light;
    step.light_doubt = reading.doubt;
    step.clipped_share = reading.clipped;
    step.slot = row.slots[i];
    steps.push_back(step);
  }
  return steps;
}

void add_bare_light(FoundWedge& wedge, const ScanGrid& grid, const WedgeRow& row,
                    const cv::Mat1f& smooth, const cv::Mat1f& uneven, double scan_px) {
  cv::Mat1b mask;
  cv::compare(uneven, bare_unevenness, mask, cv::CMP_LT);
  leave_row_out(mask, row);
  std::vector<double> levels;
  for (int y = 0; y < smooth.rows; y += 2) {
    for (int x = 0; x < smooth.cols; x += 2) {
      if (mask(y, x) != 0) {
        levels.push_back(static_cast<double>(smooth(y, x)));
      }
    }
  }
  if (levels.empty()) {
    return;
  }
  constexpr double brightest_part = 0.02;
  const double brightest = percentile(levels, brightest_part);
  cv::Mat1b bright;
  cv::compare(smooth, brightest + bare_range, bright, cv::CMP_LT);
  mask &= bright;
  cv::Mat1f inside;
  cv::copyMakeBorder(mask, mask, 1, 1, 1, 1, cv::BORDER_CONSTANT, cv::Scalar(0));
  cv::distanceTransform(mask, inside, cv::DIST_L2, 3);
  const cv::Point place = nearest_wide_place(inside(cv::Rect(1, 1, smooth.cols, smooth.rows)), row);
  if (place.x < 0) {
    return;
  }
  const double half = 0.6 * static_cast<double>(inside(place.y + 1, place.x + 1));
  const std::array<PointPx, 4> corners{{{(place.x - half) * scan_px, (place.y - half) * scan_px},
                                        {(place.x + half) * scan_px, (place.y - half) * scan_px},
                                        {(place.x + half) * scan_px, (place.y + half) * scan_px},
                                        {(place.x - half) * scan_px, (place.y + half) * scan_px}}};
  const AreaReading reading = read_area(grid, corners);
  const int channels = grid.light.channels();
  const double bare = visual_from_channels(reading.light, channels);
  const double lightest = visual_from_channels(wedge.steps.front().light, channels);
  const double clipped = *std::max_element(reading.clipped.begin(), reading.clipped.end());
  const bool brighter = bare > lightest * std::pow(10.0, above_lightest);
  if (brighter || (clipped > 0.0 && bare >= lightest)) {
    wedge.bare_light = reading.light;
    wedge.bare_corners_px = corners;
    wedge.bare_clipped_share = clipped;
  }
}

}  // namespace fogline
