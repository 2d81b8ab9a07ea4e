#include "sensitometry/weighed_shapes.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <limits>

namespace fogline {

namespace {

/// The warp's sizes and lengths in log H that are weighed, and how far doubts are believed, each
/// with its probability beforehand: films are smooth, large warps are seldom (common practice, no
/// source).
struct WarpSize {
  double log_h;
  double probability;
};
constexpr std::array warp_sizes{WarpSize{0.004, 0.35}, WarpSize{0.015, 0.35}, WarpSize{0.04, 0.25},
                                WarpSize{0.1, 0.05}};
constexpr std::array warp_lengths{0.3, 0.8};
struct Belief {
  double factor;
  double probability;
};
constexpr std::array beliefs{Belief{1.0, 0.85}, Belief{1.6, 0.13}, Belief{2.6, 0.02}};
/// Assumptions less probable than this part of the best change nothing.
constexpr double negligible = 1e-3;
/// A curve is told so far beyond the exposures, in log H.
constexpr double beyond = 1.5;
/// Base plus fog where nobody read it (common practice, no source).
constexpr double usual_base = 0.25;
constexpr double usual_base_doubt = 0.15;
/// No base is known better against the steps than this, density.
constexpr double least_base_doubt = 5e-4;
constexpr double least_density_doubt = 5e-4;

/// Turns logarithms of weights into weights.
void weigh(std::vector<WeighedShape>& all) {
  double best = -std::numeric_limits<double>::infinity();
  for (const WeighedShape& one : all) {
    best = std::max(best, one.weight);
  }
  std::erase_if(all,
                [&](const WeighedShape& one) { return one.weight < best + std::log(negligible); });
  double sum = 0.0;
  for (WeighedShape& one : all) {
    one.weight = std::exp(one.weight - best);
    sum += one.weight;
  }
  for (WeighedShape& one : all) {
    one.weight /= sum;
  }
}

}  // namespace

ShapeProblem CurveGround::problem(const ShapeAssumption& assumption) const {
  return {steps, base, base_doubt, assumption, nodes};
}

CurveGround curve_ground(const ExposedSteps& exposed, const std::vector<ExposedStep>& used) {
  CurveGround ground{used, usual_base, usual_base_doubt, {}};
  if (exposed.base_fog) {
    ground.base = *exposed.base_fog;
    ground.base_doubt = std::max(least_base_doubt, exposed.base_fog_doubt);
  }
  for (ExposedStep& step : ground.steps) {
    step.density_doubt = std::max(least_density_doubt, step.density_doubt);
  }
  const double begin = used.front().log_h - beyond;
  const int count = static_cast<int>((used.back().log_h + beyond - begin) / node_distance) + 2;
  for (int i = 0; i < count; ++i) {
    ground.nodes.push_back(begin + node_distance * i);
  }
  return ground;
}

std::vector<WeighedShape> weighed_shapes(const CurveGround& ground) {
  std::vector<WeighedShape> all;
  for (const ShapeFamily family : shape_families) {
    std::vector<double> start;
    for (const double length : warp_lengths) {
      for (const WarpSize& size : warp_sizes) {
        for (const Belief& belief : beliefs) {
          const ShapeAssumption assumption{family, {size.log_h, length}, belief.factor};
          ShapeFit fit = ground.problem(assumption).fitted(start);
          if (fit.solved) {
            start = fit.unknowns;
            const double weight =
                fit.log_evidence + std::log(size.probability * belief.probability);
            all.push_back({assumption, std::move(fit), weight});
          }
        }
      }
    }
  }
  weigh(all);
  return all;
}

}  // namespace fogline
