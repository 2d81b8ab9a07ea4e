#include "tint/picture_slope.h"

#include "numerics/least_squares.h"
#include "numerics/robust.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <map>
#include <utility>

namespace fogline {

namespace {

/// Side of a spot, mm: 100 pixels of 0.1 mm bring noise to a tenth, and pictures still vary.
constexpr double spot_mm = 1.0;
/// Densest spot used, above clear film. Half a percent of stray light left is 0.03 there, a
/// tenth of it in one channel only.
constexpr double most_net = 1.2;
/// Least range of density of one picture's spots, and fewest spots.
constexpr double least_span = 0.15;
constexpr std::size_t fewest_spots = 40;
/// Spots share what is uneven over this length, mm; their scatter counts by such cells.
constexpr double cell_mm = 6.0;
/// Smallest scatter to believe: codes are rounded.
constexpr double least_scatter = 0.0005;

struct Spot {
  PerChannel<double> density{};
  std::pair<int, int> cell;
};

std::optional<Spot> read_spot(const DensityStrip& density, int x0, int y0, int side) {
  Spot spot;
  int count = 0;
  for (int y = y0; y < y0 + side; ++y) {
    for (int x = x0; x < x0 + side; ++x) {
      for (int c = 0; c < most_channels; ++c) {
        const float value = density.channels.at(x, y, c);
        if (!std::isfinite(value)) {
          return std::nullopt;
        }
        spot.density[static_cast<std::size_t>(c)] += static_cast<double>(value);
      }
      ++count;
    }
  }
  for (double& value : spot.density) {
    value /= count;
  }
  const int cell_px = static_cast<int>(cell_mm * density.pixels_per_mm);
  spot.cell = {x0 / cell_px, y0 / cell_px};
  return spot;
}

std::vector<Spot> spots_of(const DensityStrip& density, const FilmExtent& picture, double densest) {
  std::vector<Spot> spots;
  const int side = std::max(1, static_cast<int>(spot_mm * density.pixels_per_mm));
  const int x1 = density.column(picture.along_end_mm);
  const int y1 = density.row(picture.across_end_mm);
  for (int y = density.row(picture.across_begin_mm); y + side <= y1; y += side) {
    for (int x = density.column(picture.along_begin_mm); x + side <= x1; x += side) {
      const std::optional<Spot> spot = read_spot(density, x, y, side);
      if (spot && spot->density[0] < densest) {
        spots.push_back(*spot);
      }
    }
  }
  return spots;
}

/// Slope of (channel - red) on their mean in one picture, its variance, and the sum of squares of
/// the mean, by which pictures are weighted.
struct Tilt {
  double value = 0.0;
  double variance = 0.0;
  double squares = 0.0;
};

Tilt tilt_of(const std::vector<Spot>& spots, std::size_t channel) {
  LinearProblem problem;
  problem.coefficients = 2;
  double mean = 0.0;
  for (const Spot& spot : spots) {
    const double middle = 0.5 * (spot.density[channel] + spot.density[0]);
    mean += middle / static_cast<double>(spots.size());
    problem.add(std::array{1.0, middle}, spot.density[channel] - spot.density[0]);
  }
  const LinearFit fit = fit_robust(problem, least_scatter);
  Tilt tilt;
  if (!fit.solved) {
    return tilt;
  }
  std::map<std::pair<int, int>, double> cells;
  for (std::size_t i = 0; i < spots.size(); ++i) {
    const double from_mean = problem.basis[2 * i + 1] - mean;
    const double residual =
        problem.observed[i] - fit.coefficients[0] - fit.coefficients[1] * problem.basis[2 * i + 1];
    tilt.squares += fit.row_weights[i] * from_mean * from_mean;
    cells[spots[i].cell] += fit.row_weights[i] * from_mean * residual;
  }
  double sum = 0.0;
  for (const auto& [cell, score] : cells) {
    sum += score * score;
  }
  tilt.value = fit.coefficients[1];
  tilt.variance = sum / (tilt.squares * tilt.squares);
  return tilt;
}

/// Pictures together: weighted by their squares; where they disagree by more than their own
/// scatter, their disagreement is the doubt.
Tilt joined(const std::vector<Tilt>& tilts) {
  Tilt all;
  for (const Tilt& tilt : tilts) {
    all.squares += tilt.squares;
    all.value += tilt.squares * tilt.value;
  }
  if (all.squares <= 0.0) {
    return all;
  }
  all.value /= all.squares;
  double between = 0.0;
  for (const Tilt& tilt : tilts) {
    const double share = tilt.squares / all.squares;
    all.variance += share * share * tilt.variance;
    between += share * share * (tilt.value - all.value) * (tilt.value - all.value);
  }
  if (tilts.size() > 2) {
    all.variance = std::max(all.variance, between);
  }
  return all;
}

}  // namespace

std::optional<PictureSlope> read_picture_slope(const DensityStrip& density,
                                               const std::vector<FilmExtent>& pictures,
                                               double clear_red) {
  if (density.channels.channels() != most_channels) {
    return std::nullopt;
  }
  PerChannel<std::vector<Tilt>> tilts;
  PictureSlope result;
  result.low = INFINITY;
  for (const FilmExtent& picture : pictures) {
    const std::vector<Spot> spots = spots_of(density, picture, clear_red + most_net);
    std::vector<double> reds;
    for (const Spot& spot : spots) {
      reds.push_back(spot.density[0]);
    }
    if (spots.size() < fewest_spots ||
        percentile(reds, 0.95) - percentile(reds, 0.05) < least_span) {
      continue;
    }
    result.low = std::min(result.low, percentile(reds, 0.05));
    result.high = std::max(result.high, percentile(reds, 0.95));
    for (const std::size_t c : {std::size_t{1}, std::size_t{2}}) {
      tilts[c].push_back(tilt_of(spots, c));
    }
  }
  for (const std::size_t c : {std::size_t{1}, std::size_t{2}}) {
    const Tilt tilt = joined(tilts[c]);
    if (tilt.squares <= 0.0) {
      return std::nullopt;
    }
    result.slope[c] = (2.0 + tilt.value) / (2.0 - tilt.value);
    result.doubt = std::max(result.doubt, std::sqrt(tilt.variance));
  }
  return result;
}

}  // namespace fogline
