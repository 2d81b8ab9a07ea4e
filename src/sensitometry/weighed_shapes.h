#pragma once

#include "sensitometry/shape_fit.h"

#include <vector>

namespace fogline {

/// Steps that a curve is to pass, what is known of base plus fog, and the places of log H between
/// which the curve is told.
struct CurveGround {
  std::vector<ExposedStep> steps;
  double base = 0.0;
  double base_doubt = 0.0;
  std::vector<double> nodes;

  [[nodiscard]] ShapeProblem problem(const ShapeAssumption& assumption) const;
};
inline constexpr double node_distance = 0.1;

/// Ground of `used` steps in order of log H.
CurveGround curve_ground(const ExposedSteps& exposed, const std::vector<ExposedStep>& used);

/// A fit under one set of assumptions, and its probability.
struct WeighedShape {
  ShapeAssumption assumption;
  ShapeFit fit;
  double weight = 0.0;
};

/// Fits under all sets of assumptions, weighed by the probability that each gives to the steps;
/// those that hardly count are left out. The weights add up to 1. Empty where none could be fitted.
std::vector<WeighedShape> weighed_shapes(const CurveGround& ground);

}  // namespace fogline
