#include "numerics/least_squares.h"

#include "numerics/robust.h"
#include "numerics/row_major.h"

#include <algorithm>
#include <cmath>

#include <Eigen/Dense>

namespace fogline {

namespace {

/// Tuning constant of the biweight: 95 % efficiency for normal errors.
constexpr double biweight_cut = 4.685;
/// Reweighting steps; both schemes settle within a dozen on the problems met here.
constexpr int reweighting_steps = 20;

std::vector<double> residuals(const LinearProblem& problem, const LinearFit& fit) {
  std::vector<double> result(problem.observed.size());
  const auto width = static_cast<std::size_t>(problem.coefficients);
  for (std::size_t row = 0; row < result.size(); ++row) {
    const std::span<const double> basis(problem.basis.data() + row * width, width);
    result[row] = problem.observed[row] - fit.predict(basis);
  }
  return result;
}

LinearFit solve_weighted(const LinearProblem& problem, const std::vector<double>& row_weights) {
  LinearFit fit;
  const int rows = problem.rows();
  const int columns = problem.coefficients;
  if (columns <= 0 || rows < columns) {
    return fit;
  }
  const Eigen::Map<const RowMajor> basis(problem.basis.data(), rows, columns);
  const Eigen::Map<const Eigen::VectorXd> observed(problem.observed.data(), rows);
  Eigen::VectorXd root_weights(rows);
  for (int row = 0; row < rows; ++row) {
    const auto r = static_cast<std::size_t>(row);
    const double prior = problem.weights.empty() ? 1.0 : problem.weights[r];
    root_weights[row] = std::sqrt(prior * row_weights[r]);
  }
  const Eigen::MatrixXd weighted = root_weights.asDiagonal() * basis;
  const Eigen::VectorXd weighted_observed = root_weights.cwiseProduct(observed);
  const Eigen::ColPivHouseholderQR<Eigen::MatrixXd> qr(weighted);
  if (qr.rank() < columns) {
    return fit;
  }
  const Eigen::VectorXd solution = qr.solve(weighted_observed);
  const double sum_of_squares = (weighted_observed - weighted * solution).squaredNorm();
  const int freedom = rows - columns;
  fit.residual_sd = freedom > 0 ? std::sqrt(sum_of_squares / freedom) : 0.0;

  // Covariance = sd^2 (R^T R)^-1, columns permuted back.
  const Eigen::MatrixXd upper = qr.matrixR().topLeftCorner(columns, columns);
  const Eigen::MatrixXd inverse =
      upper.triangularView<Eigen::Upper>().solve(Eigen::MatrixXd::Identity(columns, columns));
  const Eigen::VectorXd variances = (inverse * inverse.transpose()).diagonal();
  const Eigen::VectorXd errors = qr.colsPermutation() * (variances.cwiseSqrt() * fit.residual_sd);
  fit.coefficients.assign(solution.data(), solution.data() + columns);
  fit.standard_errors.assign(errors.data(), errors.data() + columns);
  fit.row_weights = row_weights;
  fit.solved = true;
  return fit;
}

double residual_scale(const std::vector<double>& residual, double floor) {
  std::vector<double> sizes(residual.size());
  std::transform(residual.begin(), residual.end(), sizes.begin(),
                 [](double r) { return std::abs(r); });
  return std::max(floor, mad_to_sd * median(sizes));
}

}  // namespace

void LinearProblem::add(std::span<const double> row, double value) {
  basis.insert(basis.end(), row.begin(), row.end());
  observed.push_back(value);
}

double LinearFit::predict(std::span<const double> row) const {
  double sum = 0.0;
  for (std::size_t i = 0; i < row.size() && i < coefficients.size(); ++i) {
    sum += row[i] * coefficients[i];
  }
  return sum;
}

LinearFit fit_least_squares(const LinearProblem& problem) {
  return solve_weighted(problem, std::vector<double>(problem.observed.size(), 1.0));
}

LinearFit fit_robust(const LinearProblem& problem, double scale_floor) {
  std::vector<double> weights(problem.observed.size(), 1.0);
  LinearFit fit = solve_weighted(problem, weights);
  for (int step = 0; step < 2 * reweighting_steps && fit.solved; ++step) {
    const std::vector<double> residual = residuals(problem, fit);
    const double scale = residual_scale(residual, scale_floor);
    const bool absolute_deviations = step < reweighting_steps;
    for (std::size_t row = 0; row < weights.size(); ++row) {
      const double size = std::abs(residual[row]);
      if (absolute_deviations) {
        weights[row] = std::min(1.0, scale_floor / std::max(size, 1e-12 * scale_floor));
      } else {
        const double u = size / (biweight_cut * scale);
        weights[row] = u < 1.0 ? (1.0 - u * u) * (1.0 - u * u) : 0.0;
      }
    }
    const LinearFit next = solve_weighted(problem, weights);
    if (!next.solved) {
      break;
    }
    fit = next;
  }
  return fit;
}

}  // namespace fogline
