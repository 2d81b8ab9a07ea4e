#include "logistic_fit.h"

#include <algorithm>
#include <cmath>

#include <Eigen/Dense>

namespace training {

namespace {

double probability(double log_odds) {
  return 1.0 / (1.0 + std::exp(-log_odds));
}

}  // namespace

double LogisticFit::log_odds(const std::vector<double>& signs) const {
  double sum = constant;
  for (std::size_t i = 0; i < weights.size(); ++i) {
    sum += weights[i] * signs[i];
  }
  return sum;
}

LogisticFit fit_logistic(const std::vector<Example>& examples) {
  const auto rows = static_cast<Eigen::Index>(examples.size());
  const auto columns = static_cast<Eigen::Index>(examples.front().signs.size());
  Eigen::MatrixXd signs(rows, columns);
  Eigen::VectorXd right(rows);
  for (Eigen::Index i = 0; i < rows; ++i) {
    const Example& example = examples[static_cast<std::size_t>(i)];
    for (Eigen::Index j = 0; j < columns; ++j) {
      signs(i, j) = example.signs[static_cast<std::size_t>(j)];
    }
    right(i) = example.right ? 1.0 : 0.0;
  }
  // In units of their own spread about their mean, the signs are alike in weight.
  const Eigen::RowVectorXd mean = signs.colwise().mean();
  signs.rowwise() -= mean;
  const Eigen::RowVectorXd spread =
      (signs.array().square().colwise().mean().sqrt()).max(1e-12).matrix();
  signs.array().rowwise() /= spread.array();
  Eigen::MatrixXd design(rows, columns + 1);
  design << Eigen::VectorXd::Ones(rows), signs;

  constexpr double prior_sd = 10.0;
  const Eigen::VectorXd precision =
      Eigen::VectorXd::Constant(columns + 1, 1.0 / (prior_sd * prior_sd));
  Eigen::VectorXd weights = Eigen::VectorXd::Zero(columns + 1);
  constexpr int most_steps = 100;
  constexpr double close = 1e-10;
  for (int step = 0; step < most_steps; ++step) {
    const Eigen::VectorXd told = (design * weights).unaryExpr(&probability);
    const Eigen::VectorXd certainty = (told.array() * (1.0 - told.array())).matrix();
    const Eigen::VectorXd gradient =
        design.transpose() * (right - told) - precision.cwiseProduct(weights);
    Eigen::MatrixXd curvature = design.transpose() * certainty.asDiagonal() * design;
    curvature.diagonal() += precision;
    const Eigen::VectorXd change = curvature.ldlt().solve(gradient);
    weights += change;
    if (change.cwiseAbs().maxCoeff() < close) {
      break;
    }
  }
  LogisticFit fit;
  fit.constant = weights(0);
  for (Eigen::Index j = 0; j < columns; ++j) {
    fit.weights.push_back(weights(j + 1) / spread(j));
    fit.constant -= fit.weights.back() * mean(j);
  }
  return fit;
}

}  // namespace training
