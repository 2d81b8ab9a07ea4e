#include "numerics/gaussian_process.h"

#include "numerics/row_major.h"

#include <cmath>

#include <Eigen/Cholesky>
#include <Eigen/Dense>

namespace fogline {

namespace {

/// Added to variances so that smooth functions' matrices keep their roots: a millionth of the
/// amplitude's square.
constexpr double least_variance_part = 1e-6;

Eigen::MatrixXd kernel_covariances(StrayKernel kernel, std::span<const double> a,
                                   std::span<const double> b) {
  Eigen::MatrixXd result(a.size(), b.size());
  for (std::size_t i = 0; i < a.size(); ++i) {
    for (std::size_t j = 0; j < b.size(); ++j) {
      const double apart = (a[i] - b[j]) / kernel.length;
      result(static_cast<Eigen::Index>(i), static_cast<Eigen::Index>(j)) =
          kernel.amplitude * kernel.amplitude * std::exp(-0.5 * apart * apart);
    }
  }
  return result;
}

std::vector<double> row_by_row(const Eigen::MatrixXd& matrix) {
  const RowMajor rows = matrix;
  return {rows.data(), rows.data() + rows.size()};
}

Eigen::Map<const RowMajor> as_matrix(const std::vector<double>& values, std::size_t rows,
                                     std::size_t columns) {
  return {values.data(), static_cast<Eigen::Index>(rows), static_cast<Eigen::Index>(columns)};
}

Eigen::Map<const Eigen::VectorXd> as_vector(std::span<const double> values) {
  return {values.data(), static_cast<Eigen::Index>(values.size())};
}

std::vector<double> as_values(const Eigen::VectorXd& vector) {
  return {vector.data(), vector.data() + vector.size()};
}

}  // namespace

StrayingFunction::StrayingFunction(StrayKernel kernel, std::span<const double> points,
                                   std::span<const double> error, std::span<const double> nodes)
    : points_(points.size()), nodes_(nodes.size()) {
  const double least = least_variance_part * kernel.amplitude * kernel.amplitude;
  Eigen::MatrixXd at_points = kernel_covariances(kernel, points, points);
  for (std::size_t i = 0; i < points_; ++i) {
    const auto row = static_cast<Eigen::Index>(i);
    at_points(row, row) += error[i] * error[i] + least;
  }
  const Eigen::LLT<Eigen::MatrixXd> root(at_points);
  root_ = row_by_row(root.matrixL());
  const Eigen::MatrixXd across = kernel_covariances(kernel, nodes, points);
  const Eigen::MatrixXd gain = root.solve(across.transpose()).transpose();
  gain_ = row_by_row(gain);
  Eigen::MatrixXd rest = kernel_covariances(kernel, nodes, nodes) - gain * across.transpose();
  rest.diagonal().array() += least;
  // Rounding may leave a hair below zero: the robust factorisation takes it for zero.
  const Eigen::LDLT<Eigen::MatrixXd> factors(rest);
  const Eigen::VectorXd scale = factors.vectorD().cwiseMax(0.0).cwiseSqrt();
  const Eigen::MatrixXd lower = factors.matrixL();
  rest_root_ = row_by_row(factors.transpositionsP().transpose() * (lower * scale.asDiagonal()));
}

std::vector<double> StrayingFunction::mean_at_nodes(std::span<const double> at_points) const {
  return as_values(as_matrix(gain_, nodes_, points_) * as_vector(at_points));
}

std::vector<double> StrayingFunction::draw_at_nodes(std::span<const double> at_points,
                                                    std::span<const double> normals) const {
  return as_values(as_matrix(gain_, nodes_, points_) * as_vector(at_points) +
                   as_matrix(rest_root_, nodes_, nodes_) * as_vector(normals));
}

}  // namespace fogline
