#pragma once

#include <functional>
#include <span>
#include <vector>

namespace fogline {

/// Residuals that are to become small, and how they change with the parameters.
struct NonlinearProblem {
  int residuals = 0;
  std::vector<double> start;
  /// Fills the residuals (observed less predicted, in units of their doubt if these differ).
  std::function<void(std::span<const double> parameters, std::span<double> residual)> residual_of;
  /// Fills their derivatives, parameter by parameter: those of all residuals by the first, and so
  /// on.
  std::function<void(std::span<const double> parameters, std::span<double> derivative)>
      derivative_of;
};

struct NonlinearFit {
  /// False where there are fewer residuals than parameters, where they can't be told apart, or
  /// where no minimum was reached.
  bool solved = false;
  std::vector<double> parameters;
  double sum_of_squares = 0.0;
  /// Residual standard deviation with residuals - parameters degrees of freedom; 0 without any.
  double residual_sd = 0.0;
  /// Inverse of the derivatives' normal matrix, row by row: the parameters' covariance where the
  /// residuals are in units of their doubt.
  std::vector<double> covariance;
  /// Logarithm of the normal matrix's determinant.
  double log_determinant = 0.0;

  /// Standard errors from the residuals' own scatter.
  [[nodiscard]] std::vector<double> standard_errors() const;
};

/// Least squares by Levenberg and Marquardt's method (Moré 1978, as ported in Eigen from MINPACK).
NonlinearFit fit_nonlinear(const NonlinearProblem& problem);

}  // namespace fogline
