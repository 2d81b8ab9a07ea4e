#pragma once

#include "numerics/gaussian_process.h"
#include "numerics/normal_draws.h"

#include <fogline/sensitometry/characteristic_curve.h>

#include <span>
#include <vector>

namespace fogline {

/// What a fit of a shape takes for granted: several such are weighed against one another.
struct ShapeAssumption {
  ShapeFamily family = ShapeFamily::logistic;
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

/// Net density of a fit at even places of log H, and how it changes there with each unknown (place
/// by place) and with log H.
struct SampledCurve {
  std::vector<double> density;
  std::vector<double> by_unknown;
  std::vector<double> by_log_h;
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

  /// Base plus fog of a set of unknowns.
  [[nodiscard]] double base_of(std::span<const double> unknowns) const;
  /// The curve from the first node to the last but one, so many places a node.
  [[nodiscard]] SampledCurve sampled(std::span<const double> unknowns, int places_a_node) const;
  /// At the nodes, one draw of what the unknowns leave open of the warp.
  [[nodiscard]] std::vector<double> drawn_rest_of_warp(SeededNormals& random) const;

 private:
  [[nodiscard]] CurveShape shape_of(std::span<const double> unknowns) const;
  [[nodiscard]] std::vector<double> warp_at_steps(std::span<const double> unknowns) const;
  [[nodiscard]] std::size_t residual_count() const;
  void fill_residuals(std::span<const double> unknowns, std::span<double> residual) const;
  void fill_derivatives(std::span<const double> unknowns, std::span<double> derivative) const;

  std::vector<ExposedStep> steps_;
  double base_;
  double base_doubt_;
  ShapeAssumption assumption_;
  double usual_inertia_;
  std::vector<double> nodes_;
  StrayingFunction warp_;
};

}  // namespace fogline
