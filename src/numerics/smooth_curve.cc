#include "numerics/smooth_curve.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <limits>

#include <Eigen/Cholesky>
#include <Eigen/Dense>

namespace fogline {

namespace {

/// Bends are tried from hardly any to a change of slope by ten within one unit of x, each a factor
/// apart (standard deviations of the change of slope over one unit).
constexpr int bends = 15;
constexpr double least_bend = 0.003;
constexpr double bend_factor = 1.8;
/// Scatter beyond the points' own doubt, in units of their median doubt; half as probable at one.
constexpr std::array<double, 4> extra_scatters{0.0, 0.7, 1.5, 3.0};
constexpr double usual_extra_scatter = 1.0;
/// Combinations with less than this share of the best one's weight change nothing.
constexpr double negligible_weight = 1e-4;

/// Covariance of the integrated Wiener process that starts at 0.
double covariance(double a, double b) {
  const double nearer = std::max(0.0, std::min(a, b));
  const double apart = std::abs(a - b);
  return nearer * nearer * (nearer / 3.0 + apart / 2.0);
}

Eigen::MatrixXd covariances(const Eigen::VectorXd& a, const Eigen::VectorXd& b) {
  return Eigen::MatrixXd::NullaryExpr(
      a.size(), b.size(), [&](Eigen::Index i, Eigen::Index j) { return covariance(a(i), b(j)); });
}

Eigen::MatrixXd line_basis(const Eigen::VectorXd& x) {
  Eigen::MatrixXd basis(x.size(), 2);
  basis.col(0).setOnes();
  basis.col(1) = x;
  return basis;
}

/// Points as columns, x counted from the process's start.
struct Columns {
  Eigen::VectorXd x;
  Eigen::VectorXd y;
  Eigen::VectorXd doubt;
  double median_doubt = 0.0;

  Columns(const std::vector<CurvePoint>& points, double start)
      : x(static_cast<Eigen::Index>(points.size())), y(x.size()), doubt(x.size()) {
    std::vector<double> doubts;
    for (std::size_t i = 0; i < points.size(); ++i) {
      const auto row = static_cast<Eigen::Index>(i);
      x(row) = points[i].x - start;
      y(row) = points[i].y;
      doubt(row) = points[i].doubt;
      doubts.push_back(points[i].doubt);
    }
    std::nth_element(doubts.begin(),
                     doubts.begin() + static_cast<std::ptrdiff_t>(doubts.size() / 2), doubts.end());
    median_doubt = doubts[doubts.size() / 2];
  }
};

/// The fit for one bend and one extra scatter.
struct Solution {
  double bend_variance = 0.0;
  double log_weight = -std::numeric_limits<double>::infinity();
  Eigen::LLT<Eigen::MatrixXd> factor;
  /// Inverse covariance times basis, and the line's own covariance.
  Eigen::MatrixXd weighted_basis;
  Eigen::Matrix2d line_covariance;
  Eigen::Vector2d line;
  /// Inverse covariance times what the line leaves.
  Eigen::VectorXd weighted_rest;
};

Solution solve(const Columns& points, const Eigen::MatrixXd& process, double bend, double extra) {
  Solution s;
  s.bend_variance = bend * bend;
  Eigen::MatrixXd total = s.bend_variance * process;
  const double scatter = extra * points.median_doubt;
  total.diagonal() += (points.doubt.array().square() + scatter * scatter).matrix();
  s.factor.compute(total);
  if (s.factor.info() != Eigen::Success) {
    return s;
  }
  const Eigen::MatrixXd basis = line_basis(points.x);
  s.weighted_basis = s.factor.solve(basis);
  const Eigen::Matrix2d information = basis.transpose() * s.weighted_basis;
  s.line_covariance = information.inverse();
  s.line = s.line_covariance * (s.weighted_basis.transpose() * points.y);
  const Eigen::VectorXd rest = points.y - basis * s.line;
  s.weighted_rest = s.factor.solve(rest);
  const double log_determinant = 2.0 * s.factor.matrixLLT().diagonal().array().log().sum() +
                                 std::log(information.determinant());
  const double prior = -0.5 * (extra / usual_extra_scatter) * (extra / usual_extra_scatter);
  s.log_weight = prior - 0.5 * (log_determinant + rest.dot(s.weighted_rest));
  return s;
}

/// Solutions over all bends and scatters that matter, their weights summing to 1; the logarithm of
/// the sum of their weights before.
struct Mixture {
  std::vector<Solution> solutions;
  std::vector<double> weights;
  double log_evidence = -std::numeric_limits<double>::infinity();
};

Mixture mixture_of(const Columns& points) {
  const Eigen::MatrixXd process = covariances(points.x, points.x);
  Mixture mixture;
  double bend = least_bend;
  double best = -std::numeric_limits<double>::infinity();
  for (int i = 0; i < bends; ++i, bend *= bend_factor) {
    for (const double extra : extra_scatters) {
      mixture.solutions.push_back(solve(points, process, bend, extra));
      best = std::max(best, mixture.solutions.back().log_weight);
    }
  }
  std::erase_if(mixture.solutions, [&](const Solution& s) {
    return !(s.log_weight > best + std::log(negligible_weight));
  });
  double sum = 0.0;
  for (const Solution& s : mixture.solutions) {
    mixture.weights.push_back(std::exp(s.log_weight - best));
    sum += mixture.weights.back();
  }
  for (double& weight : mixture.weights) {
    weight /= sum;
  }
  mixture.log_evidence =
      best + std::log(sum / (bends * static_cast<double>(extra_scatters.size())));
  return mixture;
}

/// Means at places, and variances of each: of the value less that at the reference, or plain.
struct Prediction {
  Eigen::VectorXd mean;
  Eigen::VectorXd variance;
};

/// What is told of places is the process's prior, less what the points tell, plus what the line's
/// own doubt adds (universal kriging; Cressie 1991, section 3.4).
Prediction predict(const Solution& s, const Columns& points, const Eigen::VectorXd& places,
                   std::optional<double> reference) {
  const Eigen::MatrixXd cross = s.bend_variance * covariances(points.x, places);
  const Eigen::MatrixXd basis = line_basis(places);
  Eigen::VectorXd reference_cross = Eigen::VectorXd::Zero(points.x.size());
  Eigen::RowVector2d reference_basis = Eigen::RowVector2d::Zero();
  if (reference) {
    const Eigen::VectorXd at = Eigen::VectorXd::Constant(1, *reference);
    reference_cross = s.bend_variance * covariances(points.x, at);
    reference_basis = line_basis(at);
  }
  Prediction result;
  result.mean = basis * s.line + cross.transpose() * s.weighted_rest;
  const Eigen::MatrixXd difference = cross.colwise() - reference_cross;
  const Eigen::MatrixXd told = s.factor.matrixL().solve(difference);
  const Eigen::MatrixXd line_rest =
      (basis.rowwise() - reference_basis).transpose() - s.weighted_basis.transpose() * difference;
  result.variance.resize(places.size());
  for (Eigen::Index j = 0; j < places.size(); ++j) {
    double prior = covariance(places(j), places(j));
    if (reference) {
      prior += covariance(*reference, *reference) - 2.0 * covariance(places(j), *reference);
    }
    const double line = line_rest.col(j).dot(s.line_covariance * line_rest.col(j));
    result.variance(j) = std::max(0.0, s.bend_variance * prior - told.col(j).squaredNorm() + line);
  }
  return result;
}

double start_of(const std::vector<CurvePoint>& points, const std::vector<double>& places) {
  double start = std::numeric_limits<double>::infinity();
  for (const CurvePoint& point : points) {
    start = std::min(start, point.x);
  }
  for (const double place : places) {
    start = std::min(start, place);
  }
  return start;
}

}  // namespace

SmoothCurve fit_smooth_curve(const std::vector<CurvePoint>& points,
                             const std::vector<double>& places, double reference) {
  std::vector<double> all = places;
  all.push_back(reference);
  const double start = start_of(points, all);
  const Columns columns(points, start);
  const Mixture mixture = mixture_of(columns);
  const Eigen::VectorXd at =
      Eigen::VectorXd::Map(all.data(), static_cast<Eigen::Index>(all.size())).array() - start;
  const Eigen::Index last = at.size() - 1;
  Eigen::VectorXd mean = Eigen::VectorXd::Zero(at.size());
  Eigen::VectorXd second_moment = Eigen::VectorXd::Zero(at.size());
  for (std::size_t k = 0; k < mixture.solutions.size(); ++k) {
    const Prediction one = predict(mixture.solutions[k], columns, at, at(last));
    const Eigen::VectorXd step = one.mean.array() - one.mean(last);
    mean += mixture.weights[k] * one.mean;
    second_moment += mixture.weights[k] * (one.variance.array() + step.array().square()).matrix();
  }
  SmoothCurve curve;
  curve.x = places;
  curve.log_evidence = mixture.log_evidence;
  for (Eigen::Index j = 0; j < last; ++j) {
    const double step = mean(j) - mean(last);
    curve.y.push_back(mean(j));
    curve.doubt_from_reference.push_back(std::sqrt(std::max(0.0, second_moment(j) - step * step)));
  }
  return curve;
}

std::vector<double> left_out_residuals(const std::vector<CurvePoint>& points) {
  std::vector<double> residuals;
  const double start = start_of(points, {});
  for (std::size_t i = 0; i < points.size(); ++i) {
    std::vector<CurvePoint> others = points;
    others.erase(others.begin() + static_cast<std::ptrdiff_t>(i));
    const Columns columns(others, start);
    const Mixture mixture = mixture_of(columns);
    const Eigen::VectorXd at = Eigen::VectorXd::Constant(1, points[i].x - start);
    double mean = 0.0;
    double second_moment = 0.0;
    for (std::size_t k = 0; k < mixture.solutions.size(); ++k) {
      const Prediction one = predict(mixture.solutions[k], columns, at, {});
      mean += mixture.weights[k] * one.mean(0);
      second_moment += mixture.weights[k] * (one.variance(0) + one.mean(0) * one.mean(0));
    }
    const double variance = second_moment - mean * mean + points[i].doubt * points[i].doubt;
    constexpr double least_variance = 1e-18;
    residuals.push_back((points[i].y - mean) / std::sqrt(std::max(least_variance, variance)));
  }
  return residuals;
}

}  // namespace fogline
