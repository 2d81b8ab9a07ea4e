#pragma once

#include <span>
#include <vector>

namespace fogline {

/// A linear least-squares problem: rows of basis values and the observation that each predicts.
struct LinearProblem {
  /// Number of coefficients; every row has that many basis values.
  int coefficients = 0;
  /// Basis values row by row.
  std::vector<double> basis;
  std::vector<double> observed;
  /// One weight (1 / variance, up to a common factor) a row, or empty: all equal.
  std::vector<double> weights;

  /// Appends one observation.
  void add(std::span<const double> row, double value);
  [[nodiscard]] int rows() const { return static_cast<int>(observed.size()); }
};

/// Outcome of a linear fit. `solved` is false where there are fewer rows than coefficients or the
/// basis doesn't span them; the other members then hold nothing.
struct LinearFit {
  bool solved = false;
  std::vector<double> coefficients;
  /// Standard errors of the coefficients, from the residuals.
  std::vector<double> standard_errors;
  /// Residual standard deviation with rows - coefficients degrees of freedom; 0 without any.
  double residual_sd = 0.0;
  /// Weight each row ended with, 0 to 1: below 0.1 a row was as good as dropped. All 1 for the
  /// plain fit.
  std::vector<double> row_weights;

  [[nodiscard]] double predict(std::span<const double> row) const;
};

/// Weighted linear least squares by column-pivoting Householder QR.
LinearFit fit_least_squares(const LinearProblem& problem);

/// The same with Tukey's biweight (c = 4.685, Beaton & Tukey 1974) by iterated reweighting from a
/// least-absolute-deviations start: a minority of wild rows is dropped. `scale_floor` is the
/// smallest residual scale to believe, in units of the observations, so that an exact fit of most
/// rows doesn't drop rows that are merely rounded.
LinearFit fit_robust(const LinearProblem& problem, double scale_floor);

}  // namespace fogline
