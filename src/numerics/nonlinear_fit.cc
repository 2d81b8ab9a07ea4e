#include "numerics/nonlinear_fit.h"

#include <cmath>

#include <Eigen/Cholesky>
#include <Eigen/Dense>
#include <unsupported/Eigen/NonLinearOptimization>

namespace fogline {

namespace {

/// What Eigen's port of MINPACK calls.
struct Functor {
  const NonlinearProblem& problem;

  [[nodiscard]] int inputs() const { return static_cast<int>(problem.start.size()); }
  [[nodiscard]] int values() const { return problem.residuals; }

  int operator()(const Eigen::VectorXd& at, Eigen::VectorXd& residual) const {
    problem.residual_of({at.data(), static_cast<std::size_t>(at.size())},
                        {residual.data(), static_cast<std::size_t>(residual.size())});
    return residual.allFinite() ? 0 : -1;
  }

  int df(const Eigen::VectorXd& at, Eigen::MatrixXd& derivative) const {
    problem.derivative_of({at.data(), static_cast<std::size_t>(at.size())},
                          {derivative.data(), static_cast<std::size_t>(derivative.size())});
    return derivative.allFinite() ? 0 : -1;
  }
};

bool is_minimum(Eigen::LevenbergMarquardtSpace::Status status) {
  using namespace Eigen::LevenbergMarquardtSpace;
  return status == RelativeReductionTooSmall || status == RelativeErrorTooSmall ||
         status == RelativeErrorAndReductionTooSmall || status == CosinusTooSmall ||
         status == FtolTooSmall || status == XtolTooSmall || status == GtolTooSmall;
}

}  // namespace

std::vector<double> NonlinearFit::standard_errors() const {
  const std::size_t count = parameters.size();
  std::vector<double> errors;
  for (std::size_t i = 0; i < count; ++i) {
    errors.push_back(residual_sd * std::sqrt(covariance[i * count + i]));
  }
  return errors;
}

NonlinearFit fit_nonlinear(const NonlinearProblem& problem) {
  NonlinearFit fit;
  const auto count = static_cast<Eigen::Index>(problem.start.size());
  if (count == 0 || problem.residuals < count) {
    return fit;
  }
  Functor functor{problem};
  Eigen::VectorXd at = Eigen::Map<const Eigen::VectorXd>(problem.start.data(), count);
  Eigen::LevenbergMarquardt<Functor> search(functor);
  constexpr double tolerance = 1e-12;
  search.parameters.ftol = tolerance;
  search.parameters.xtol = tolerance;
  search.parameters.maxfev = 2000;
  if (!is_minimum(search.minimize(at))) {
    return fit;
  }
  Eigen::VectorXd residual(problem.residuals);
  Eigen::MatrixXd derivative(problem.residuals, count);
  if (functor(at, residual) < 0 || functor.df(at, derivative) < 0) {
    return fit;
  }
  const Eigen::LLT<Eigen::MatrixXd> normal(derivative.transpose() * derivative);
  if (normal.info() != Eigen::Success) {
    return fit;
  }
  fit.solved = true;
  fit.parameters.assign(at.data(), at.data() + count);
  fit.sum_of_squares = residual.squaredNorm();
  const auto freedom = static_cast<double>(problem.residuals - count);
  fit.residual_sd = freedom > 0.0 ? std::sqrt(fit.sum_of_squares / freedom) : 0.0;
  const Eigen::MatrixXd covariance = normal.solve(Eigen::MatrixXd::Identity(count, count));
  fit.covariance.assign(covariance.data(), covariance.data() + covariance.size());
  fit.log_determinant = 2.0 * normal.matrixLLT().diagonal().array().log().sum();
  return fit;
}

}  // namespace fogline
