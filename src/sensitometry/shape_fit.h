#pragma once

#include <fogline/numerics/gaussian_process.h>
#include <fogline/sensitometry/curve_shape.h>
#include <fogline/sensitometry/exposed_step.h>

#include <span>
#include <vector>

namespace fogline {

/// What a fit of a shape takes for granted: several such are weighed against one another.
struct ShapeAssumption {
  BendFamily family = BendFamily::logistic;
  /// The warp of log H.
  StrayKernel warp;
  /// The steps' own density doubts count so many times.
  double doubt_factor = 1.0;
};

/// A shape and its warp through the steps, as a normal distribution of the unknowns: base plus fog,
/// the five numbers of the shape, and one number a step for the warp there.
struct ShapeFit {
  bool solved = false;
  std::vector<double> unknowns;
  std::vector<double> covariance;
  /// Logarithm of the probability of the steps under the assumption, up to a constant.
  double log_evidence = 0.0;
  /// How far each step lies from the curve through the others, in standard deviations.
  std::vector<double> left_out_residuals;
};

/// Steps with their assumption, ready to be fitted.
class ShapeProblem {
 public:
  /// `nodes`: places of log H between which the warp is told. `base` and `base_doubt`: what is
  /// known of base plus fog.
  ShapeProblem(std::vector<ExposedStep> steps, double base, double base_doubt,
               const ShapeAssumption& assumption, std::span<const double> nodes);

  /// Starts from the unknowns of another fit of the same steps, or by itself.
  [[nodiscard]] ShapeFit fitted(std::span<const double> start) const;

  /// Base plus fog and shape of a set of unknowns.
  [[nodiscard]] double base_of(std::span<const double> unknowns) const;
  [[nodiscard]] CurveShape shape_of(std::span<const double> unknowns) const;
  /// The warp at the nodes: log H to be added before the shape is read.
  [[nodiscard]] std::vector<double> warp_of(std::span<const double> unknowns) const;
  [[nodiscard]] std::vector<double> drawn_warp(std::span<const double> unknowns,
                                               std::span<const double> normals) const;

 private:
  [[nodiscard]] std::vector<double> warp_at_steps(std::span<const double> unknowns) const;
  [[nodiscard]] std::size_t residual_count() const;
  void fill_residuals(std::span<const double> unknowns, std::span<double> residual) const;
  void fill_derivatives(std::span<const double> unknowns, std::span<double> derivative) const;

  std::vector<ExposedStep> steps_;
  double base_;
  double base_doubt_;
  ShapeAssumption assumption_;
  double usual_inertia_;
  StrayingFunction warp_;
};

}  // namespace fogline
