#include "sensitometry/shape_fit.h"

#include "numerics/nonlinear_fit.h"

#include <algorithm>
#include <array>
#include <cmath>

namespace fogline {

namespace {

/// Places of the unknowns: base plus fog, the shape's five, then the warp's, one a step.
enum ShapeUnknown : std::size_t { base, slope, inertia, toe, greatest, shoulder, shape_unknowns };

/// What is usual of films before any step is seen: middle and standard deviation, of logarithms
/// but for the inertia point, whose middle is the steps' own (common practice, no source: slopes of
/// 0.35 to 1.2, toes over 0.06 to 0.6 of log H, greatest net densities of 1.1 to 4.5).
struct Usual {
  double middle;
  double deviation;
};
const std::array<Usual, shape_unknowns> usual{{{0.0, 1.0},
                                               {std::log(0.7), 0.7},
                                               {0.0, 1.5},
                                               {std::log(0.25), 0.8},
                                               {std::log(2.2), 0.4},
                                               {std::log(0.25), 0.7}}};

double whole(ShapeUnknown which, double standard) {
  return usual[which].middle + usual[which].deviation * standard;
}

std::vector<double> log_h_of(const std::vector<ExposedStep>& steps) {
  std::vector<double> result;
  for (const ExposedStep& step : steps) {
    result.push_back(step.log_h);
  }
  return result;
}

std::vector<double> log_h_doubts_of(const std::vector<ExposedStep>& steps) {
  std::vector<double> result;
  for (const ExposedStep& step : steps) {
    result.push_back(step.log_h_doubt);
  }
  return result;
}

/// Where a straight line of the usual slope through the middle step's density meets the base.
double first_inertia(const std::vector<ExposedStep>& steps, double base_fog) {
  std::vector<double> crossings;
  for (const ExposedStep& step : steps) {
    if (step.density > base_fog + 0.1) {
      crossings.push_back(step.log_h - (step.density - base_fog) / 0.65);
    }
  }
  if (crossings.empty()) {
    return steps.back().log_h;
  }
  std::sort(crossings.begin(), crossings.end());
  return crossings[crossings.size() / 2];
}

/// Net density's derivatives with base plus fog, which it doesn't hold, and the shape's unknowns.
std::array<double, shape_unknowns> by_shape_unknowns(const ShapedDensity& at) {
  std::array<double, shape_unknowns> by{0.0,           at.by_log_slope,    at.by_inertia,
                                        at.by_log_toe, at.by_log_greatest, at.by_log_shoulder};
  for (std::size_t k = 0; k < shape_unknowns; ++k) {
    by[k] *= usual[k].deviation;
  }
  return by;
}

}  // namespace

ShapeProblem::ShapeProblem(std::vector<ExposedStep> steps, double base_fog, double base_doubt,
                           const ShapeAssumption& assumption, std::span<const double> nodes)
    : steps_(std::move(steps)),
      base_(base_fog),
      base_doubt_(base_doubt),
      assumption_(assumption),
      usual_inertia_(first_inertia(steps_, base_fog)),
      nodes_(nodes.begin(), nodes.end()),
      warp_(assumption.warp, log_h_of(steps_), log_h_doubts_of(steps_), nodes) {}

double ShapeProblem::base_of(std::span<const double> unknowns) const {
  return base_ + base_doubt_ * unknowns[base];
}

CurveShape ShapeProblem::shape_of(std::span<const double> unknowns) const {
  CurveShape shape;
  shape.family = assumption_.family;
  shape.slope = std::exp(whole(slope, unknowns[slope]));
  shape.inertia_log_h = usual_inertia_ + whole(inertia, unknowns[inertia]);
  shape.toe_width = std::exp(whole(toe, unknowns[toe]));
  shape.greatest_density = std::exp(whole(greatest, unknowns[greatest]));
  shape.shoulder_width = std::exp(whole(shoulder, unknowns[shoulder]));
  return shape;
}

std::vector<double> ShapeProblem::warp_at_steps(std::span<const double> unknowns) const {
  const std::size_t count = steps_.size();
  std::vector<double> warp(count, 0.0);
  for (std::size_t i = 0; i < count; ++i) {
    for (std::size_t j = 0; j <= i; ++j) {
      warp[i] += warp_.root()[i * count + j] * unknowns[shape_unknowns + j];
    }
  }
  return warp;
}

SampledCurve ShapeProblem::sampled(std::span<const double> unknowns, int places_a_node) const {
  const CurveShape shape = shape_of(unknowns);
  const std::size_t count = steps_.size();
  const std::vector<double> warp = warp_.mean_at_nodes(warp_at_steps(unknowns));
  std::vector<std::vector<double>> warp_by;
  for (std::size_t j = 0; j < count; ++j) {
    std::vector<double> column(count, 0.0);
    for (std::size_t i = j; i < count; ++i) {
      column[i] = warp_.root()[i * count + j];
    }
    warp_by.push_back(warp_.mean_at_nodes(column));
  }
  SampledCurve curve;
  for (std::size_t i = 0; i + 1 < nodes_.size(); ++i) {
    for (int part = 0; part < places_a_node; ++part) {
      const double share = static_cast<double>(part) / places_a_node;
      const auto between = [&](const std::vector<double>& values) {
        return values[i] + share * (values[i + 1] - values[i]);
      };
      const ShapedDensity at = shaped_density(shape, between(nodes_) + between(warp));
      curve.density.push_back(at.density);
      curve.by_log_h.push_back(at.by_log_h);
      for (const double by_shape : by_shape_unknowns(at)) {
        curve.by_unknown.push_back(by_shape);
      }
      for (const std::vector<double>& by : warp_by) {
        curve.by_unknown.push_back(at.by_log_h * between(by));
      }
    }
  }
  return curve;
}

std::vector<double> ShapeProblem::drawn_rest_of_warp(SeededNormals& random) const {
  const std::vector<double> nothing(steps_.size(), 0.0);
  return warp_.draw_at_nodes(nothing, random.next(nodes_.size()));
}

std::size_t ShapeProblem::residual_count() const {
  return 2 * steps_.size() + shape_unknowns;
}

void ShapeProblem::fill_residuals(std::span<const double> unknowns,
                                  std::span<double> residual) const {
  const CurveShape shape = shape_of(unknowns);
  const double base_fog = base_of(unknowns);
  const std::vector<double> warp = warp_at_steps(unknowns);
  for (std::size_t i = 0; i < steps_.size(); ++i) {
    const ShapedDensity at = shaped_density(shape, steps_[i].log_h + warp[i]);
    residual[i] = (steps_[i].density - base_fog - at.density) /
                  (assumption_.doubt_factor * steps_[i].density_doubt);
  }
  // Every unknown is standard normal before the steps are seen.
  std::copy(unknowns.begin(), unknowns.end(),
            residual.begin() + static_cast<std::ptrdiff_t>(steps_.size()));
}

void ShapeProblem::fill_derivatives(std::span<const double> unknowns,
                                    std::span<double> derivative) const {
  const CurveShape shape = shape_of(unknowns);
  const std::vector<double> warp = warp_at_steps(unknowns);
  const std::size_t rows = residual_count();
  const std::size_t count = steps_.size();
  std::fill(derivative.begin(), derivative.end(), 0.0);
  for (std::size_t i = 0; i < count; ++i) {
    const ShapedDensity at = shaped_density(shape, steps_[i].log_h + warp[i]);
    const double scale = -1.0 / (assumption_.doubt_factor * steps_[i].density_doubt);
    const auto by_shape = by_shape_unknowns(at);
    for (std::size_t k = 0; k < shape_unknowns; ++k) {
      derivative[k * rows + i] = scale * by_shape[k];
    }
    derivative[base * rows + i] = scale * base_doubt_;
    for (std::size_t j = 0; j <= i; ++j) {
      derivative[(shape_unknowns + j) * rows + i] =
          scale * at.by_log_h * warp_.root()[i * count + j];
    }
  }
  for (std::size_t k = 0; k < count + shape_unknowns; ++k) {
    derivative[k * rows + count + k] = 1.0;
  }
}

ShapeFit ShapeProblem::fitted(std::span<const double> start) const {
  const std::size_t count = steps_.size();
  NonlinearProblem problem;
  problem.residuals = static_cast<int>(residual_count());
  problem.start.assign(count + shape_unknowns, 0.0);
  std::copy(start.begin(), start.end(), problem.start.begin());
  problem.residual_of = [this](std::span<const double> at, std::span<double> residual) {
    fill_residuals(at, residual);
  };
  problem.derivative_of = [this](std::span<const double> at, std::span<double> derivative) {
    fill_derivatives(at, derivative);
  };
  const NonlinearFit fit = fit_nonlinear(problem);
  ShapeFit result;
  if (!fit.solved) {
    return result;
  }
  result.solved = true;
  result.unknowns = fit.parameters;
  result.covariance = fit.covariance;
  result.log_evidence = -0.5 * fit.sum_of_squares - 0.5 * fit.log_determinant -
                        static_cast<double>(count) * std::log(assumption_.doubt_factor);
  const std::size_t rows = residual_count();
  const std::size_t columns = fit.parameters.size();
  std::vector<double> residual(rows);
  std::vector<double> derivative(rows * columns);
  fill_residuals(fit.parameters, residual);
  fill_derivatives(fit.parameters, derivative);
  for (std::size_t i = 0; i < count; ++i) {
    double leverage = 0.0;
    for (std::size_t a = 0; a < columns; ++a) {
      for (std::size_t b = 0; b < columns; ++b) {
        leverage +=
            derivative[a * rows + i] * fit.covariance[a * columns + b] * derivative[b * rows + i];
      }
    }
    result.left_out_residuals.push_back(residual[i] / std::sqrt(std::max(1e-9, 1.0 - leverage)));
  }
  return result;
}

}  // namespace fogline
