#include "tint/picture_slope.h"

#include "numerics/least_squares.h"
#include "numerics/robust.h"
#include "tint/picture_spots.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <map>
#include <utility>

namespace fogline {

namespace {

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

std::pair<int, int> cell_of(const PictureSpot& spot) {
  constexpr int cell_spots = static_cast<int>(cell_mm / picture_spot_mm);
  return {spot.column / cell_spots, spot.row / cell_spots};
}

/// Slope of (channel - red) on their mean in one picture, its variance, and the sum of squares of
/// the mean, by which pictures are weighted.
struct Tilt {
  double value = 0.0;
  double variance = 0.0;
  double squares = 0.0;
};

Tilt tilt_of(const std::vector<PictureSpot>& spots, std::size_t channel) {
  LinearProblem problem;
  problem.coefficients = 2;
  double mean = 0.0;
  for (const PictureSpot& spot : spots) {
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
    cells[cell_of(spots[i])] += fit.row_weights[i] * from_mean * residual;
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
    const std::vector<PictureSpot> spots = picture_spots(density, picture, clear_red + most_net);
    std::vector<double> reds;
    for (const PictureSpot& spot : spots) {
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
