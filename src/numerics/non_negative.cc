#include "numerics/non_negative.h"

#include "numerics/row_major.h"

#include <algorithm>
#include <cmath>
#include <vector>

#include <Eigen/Dense>

namespace fogline {

namespace {

/// Gradients below this share of the largest count as zero.
constexpr double gradient_tolerance = 1e-10;
/// The method ends by itself; the bound guards against rounding that cycles.
constexpr int rounds_per_coefficient = 10;

/// Unbounded solution over the passive columns, zero elsewhere.
Eigen::VectorXd solve_passive(const Eigen::MatrixXd& basis, const Eigen::VectorXd& observed,
                              const std::vector<bool>& passive) {
  std::vector<Eigen::Index> columns;
  for (std::size_t i = 0; i < passive.size(); ++i) {
    if (passive[i]) {
      columns.push_back(static_cast<Eigen::Index>(i));
    }
  }
  const Eigen::MatrixXd chosen = basis(Eigen::all, columns);
  const Eigen::VectorXd solution = chosen.colPivHouseholderQr().solve(observed);
  Eigen::VectorXd full = Eigen::VectorXd::Zero(basis.cols());
  for (std::size_t i = 0; i < columns.size(); ++i) {
    full[columns[i]] = solution[static_cast<Eigen::Index>(i)];
  }
  return full;
}

/// Steps from `x` towards `target` until the first coefficient reaches zero; takes it out of the
/// passive set.
void step_to_bound(Eigen::VectorXd& x, const Eigen::VectorXd& target, std::vector<bool>& passive) {
  double share = 1.0;
  for (Eigen::Index i = 0; i < x.size(); ++i) {
    if (passive[static_cast<std::size_t>(i)] && target[i] <= 0.0) {
      share = std::min(share, x[i] / std::max(x[i] - target[i], 1e-300));
    }
  }
  x += share * (target - x);
  for (Eigen::Index i = 0; i < x.size(); ++i) {
    if (passive[static_cast<std::size_t>(i)] && x[i] <= 1e-14 && target[i] <= 0.0) {
      passive[static_cast<std::size_t>(i)] = false;
      x[i] = 0.0;
    }
  }
}

}  // namespace

LinearFit fit_non_negative(const LinearProblem& problem) {
  LinearFit fit;
  const int rows = problem.rows();
  const int columns = problem.coefficients;
  if (columns <= 0 || rows < columns) {
    return fit;
  }
  const Eigen::Map<const RowMajor> plain(problem.basis.data(), rows, columns);
  const Eigen::Map<const Eigen::VectorXd> plain_observed(problem.observed.data(), rows);
  Eigen::MatrixXd basis = plain;
  Eigen::VectorXd observed = plain_observed;
  if (!problem.weights.empty()) {
    const Eigen::Map<const Eigen::VectorXd> weights(problem.weights.data(), rows);
    const Eigen::VectorXd roots = weights.cwiseSqrt();
    basis = roots.asDiagonal() * basis;
    observed = roots.cwiseProduct(observed);
  }
  std::vector<bool> passive(static_cast<std::size_t>(columns), false);
  Eigen::VectorXd x = Eigen::VectorXd::Zero(columns);
  const double scale = (basis.transpose() * observed).cwiseAbs().maxCoeff();
  for (int round = 0; round < rounds_per_coefficient * columns; ++round) {
    const Eigen::VectorXd gradient = basis.transpose() * (observed - basis * x);
    Eigen::Index steepest = -1;
    for (Eigen::Index i = 0; i < columns; ++i) {
      const bool active = !passive[static_cast<std::size_t>(i)];
      if (active && gradient[i] > gradient_tolerance * scale &&
          (steepest < 0 || gradient[i] > gradient[steepest])) {
        steepest = i;
      }
    }
    if (steepest < 0) {
      break;
    }
    passive[static_cast<std::size_t>(steepest)] = true;
    Eigen::VectorXd target = solve_passive(basis, observed, passive);
    while (std::any_of(passive.begin(), passive.end(), [](bool p) { return p; }) && [&] {
      for (Eigen::Index i = 0; i < columns; ++i) {
        if (passive[static_cast<std::size_t>(i)] && target[i] <= 0.0) {
          return true;
        }
      }
      return false;
    }()) {
      step_to_bound(x, target, passive);
      target = solve_passive(basis, observed, passive);
    }
    x = target;
  }
  const double sum_of_squares = (observed - basis * x).squaredNorm();
  fit.residual_sd = rows > columns ? std::sqrt(sum_of_squares / (rows - columns)) : 0.0;
  fit.coefficients.assign(x.data(), x.data() + columns);
  fit.row_weights.assign(static_cast<std::size_t>(rows), 1.0);
  fit.solved = true;
  return fit;
}

}  // namespace fogline
