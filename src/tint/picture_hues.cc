#include "tint/picture_hues.h"

#include "numerics/least_squares.h"
#include "numerics/robust.h"
#include "tint/clear_colour.h"
#include "tint/picture_spots.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <map>
#include <utility>

namespace fogline {

namespace {

constexpr std::size_t fewest_spots = 60;
/// Densest spot used, above clear film: beyond it noise and stray light colour greys.
constexpr double most_net = 1.2;
/// Smallest scatter to believe: codes are rounded.
constexpr double least_scatter = 0.0005;

/// Greyness of a place is a smooth course: over density (veil and stain) and over the picture
/// (lamp, lens). Basis of both.
std::array<double, 8> course(const PictureSpot& spot, std::size_t channel) {
  const double density = 0.5 * (spot.density[channel] + spot.density[0]);
  const double x = 0.1 * spot.column;
  const double y = 0.1 * spot.row;
  return {1.0, density, density * density, x, y, x * x, x * y, y * y};
}

struct Scatter {
  double all = 0.0;
  double noise = 0.0;
};

Scatter scatter_of(const std::vector<PictureSpot>& spots, std::size_t channel) {
  LinearProblem problem;
  problem.coefficients = 8;
  for (const PictureSpot& spot : spots) {
    problem.add(course(spot, channel), spot.density[channel] - spot.density[0]);
  }
  const LinearFit fit = fit_robust(problem, least_scatter);
  if (!fit.solved) {
    return {};
  }
  std::vector<double> residuals;
  std::map<std::pair<int, int>, double> at;
  for (const PictureSpot& spot : spots) {
    const double residual =
        spot.density[channel] - spot.density[0] - fit.predict(course(spot, channel));
    residuals.push_back(residual);
    at[{spot.column, spot.row}] = residual;
  }
  std::vector<double> steps;
  for (const auto& [place, residual] : at) {
    if (const auto next = at.find({place.first + 1, place.second}); next != at.end()) {
      steps.push_back(next->second - residual);
    }
  }
  return {robust_location(residuals).scale,
          steps.empty() ? 0.0 : robust_location(steps).scale / std::sqrt(2.0)};
}

}  // namespace

std::optional<PictureHues> read_picture_hues(const DensityStrip& density,
                                             const std::vector<FilmExtent>& pictures,
                                             double clear_density) {
  if (density.channels.channels() != most_channels) {
    return std::nullopt;
  }
  std::vector<double> scatters;
  std::vector<double> noises;
  for (const FilmExtent& picture : pictures) {
    const std::vector<PictureSpot> spots =
        picture_spots(density, picture, clear_density + most_net);
    if (spots.size() < fewest_spots) {
      continue;
    }
    const Scatter green = scatter_of(spots, 1);
    const Scatter blue = scatter_of(spots, 2);
    const Scatter& wider = green.all > blue.all ? green : blue;
    scatters.push_back(wider.all);
    noises.push_back(wider.noise);
  }
  if (scatters.empty()) {
    return std::nullopt;
  }
  return PictureHues{median(scatters), median(noises), static_cast<int>(scatters.size())};
}

bool shows_colour_film(const DensityStrip& density, const std::vector<FilmExtent>& clear,
                       const std::vector<FilmExtent>& pictures, double least_hues_density) {
  const std::optional<ClearColour> colour = read_clear_colour(density, clear);
  if (!colour) {
    return false;
  }
  const std::optional<PictureHues> hues = read_picture_hues(density, pictures, colour->density[0]);
  if (!hues) {
    return false;
  }
  // Noise differs from spot to spot, colours stay over several.
  constexpr double least_over_noise = 1.25;
  constexpr double least_over_veil = 3.0;
  const double own = std::sqrt(std::max(0.0, hues->scatter_density * hues->scatter_density -
                                                 hues->noise_density * hues->noise_density));
  const double veil = std::sqrt(read_clear_texture(density, clear).variance);
  return own > least_hues_density && own > least_over_veil * veil &&
         hues->scatter_density > least_over_noise * hues->noise_density;
}

}  // namespace fogline
