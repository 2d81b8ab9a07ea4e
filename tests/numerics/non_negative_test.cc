#include "numerics/non_negative.h"

#include "base/seeded_noise.h"

#include <array>
#include <cmath>
#include <vector>

#include <gtest/gtest.h>

namespace fogline {
namespace {

LinearProblem random_problem(SeededNoise& noise, int rows, int coefficients) {
  LinearProblem problem;
  problem.coefficients = coefficients;
  std::vector<double> row(static_cast<std::size_t>(coefficients));
  for (int i = 0; i < rows; ++i) {
    for (double& value : row) {
      value = noise.normal(1.0);
    }
    problem.add(row, noise.normal(2.0));
  }
  return problem;
}

std::span<const double> row_of(const LinearProblem& problem, int row) {
  const auto width = static_cast<std::size_t>(problem.coefficients);
  return std::span(problem.basis).subspan(static_cast<std::size_t>(row) * width, width);
}

double sum_of_squares(const LinearProblem& problem, const LinearFit& fit) {
  double sum = 0.0;
  for (int row = 0; row < problem.rows(); ++row) {
    const double residual =
        problem.observed[static_cast<std::size_t>(row)] - fit.predict(row_of(problem, row));
    sum += residual * residual;
  }
  return sum;
}

/// Downhill slope of the sum of squares along each coefficient, halved.
std::vector<double> gradient(const LinearProblem& problem, const LinearFit& fit) {
  std::vector<double> result(static_cast<std::size_t>(problem.coefficients), 0.0);
  for (int row = 0; row < problem.rows(); ++row) {
    const std::span<const double> basis = row_of(problem, row);
    const double residual = problem.observed[static_cast<std::size_t>(row)] - fit.predict(basis);
    for (std::size_t i = 0; i < result.size(); ++i) {
      result[i] += basis[i] * residual;
    }
  }
  return result;
}

/// Smallest sum of squares over every choice of columns whose own solution is not negative: what
/// Lawson & Hanson's method must find, by trying all.
double best_by_trying_all(const LinearProblem& problem) {
  double best = INFINITY;
  for (unsigned chosen = 0; chosen < (1U << static_cast<unsigned>(problem.coefficients));
       ++chosen) {
    LinearProblem part;
    std::vector<std::size_t> columns;
    for (unsigned i = 0; i < static_cast<unsigned>(problem.coefficients); ++i) {
      if ((chosen >> i & 1U) != 0) {
        columns.push_back(i);
      }
    }
    part.coefficients = static_cast<int>(columns.size());
    for (int row = 0; row < problem.rows(); ++row) {
      std::vector<double> basis;
      for (const std::size_t column : columns) {
        basis.push_back(row_of(problem, row)[column]);
      }
      part.add(basis, problem.observed[static_cast<std::size_t>(row)]);
    }
    const LinearFit fit = fit_least_squares(part);
    const bool allowed = std::all_of(fit.coefficients.begin(), fit.coefficients.end(),
                                     [](double x) { return x >= 0; });
    if (columns.empty() || (fit.solved && allowed)) {
      best = std::min(best, sum_of_squares(part, fit));
    }
  }
  return best;
}

// Plain least squares of this gives (2, -1). With the second coefficient held at 0 the first is
// (2 + 1) / 2; the residuals are 0.5, -0.5, -1 and the slope along the second is -1.5: it stays.
TEST(NonNegative, WorkedByHand) {
  LinearProblem problem;
  problem.coefficients = 2;
  problem.add(std::array{1.0, 0.0}, 2.0);
  problem.add(std::array{1.0, 1.0}, 1.0);
  problem.add(std::array{0.0, 1.0}, -1.0);
  const LinearFit plain = fit_least_squares(problem);
  ASSERT_TRUE(plain.solved);
  EXPECT_NEAR(plain.coefficients[0], 2.0, 1e-12);
  EXPECT_NEAR(plain.coefficients[1], -1.0, 1e-12);
  const LinearFit fit = fit_non_negative(problem);
  ASSERT_TRUE(fit.solved);
  EXPECT_NEAR(fit.coefficients[0], 1.5, 1e-12);
  EXPECT_EQ(fit.coefficients[1], 0.0);
  EXPECT_NEAR(fit.residual_sd, std::sqrt(1.5), 1e-12);
  EXPECT_NEAR(gradient(problem, fit)[1], -1.5, 1e-12);
  EXPECT_TRUE(fit.standard_errors.empty());
}

// The conditions of Kuhn & Tucker, and the best of all 32 choices, on 60 problems.
TEST(NonNegative, IsTheBestOfAllChoices) {
  SeededNoise noise(7);
  int held = 0;
  for (int trial = 0; trial < 60; ++trial) {
    const LinearProblem problem = random_problem(noise, 12, 5);
    const LinearFit fit = fit_non_negative(problem);
    ASSERT_TRUE(fit.solved);
    const std::vector<double> slope = gradient(problem, fit);
    for (std::size_t i = 0; i < slope.size(); ++i) {
      EXPECT_GE(fit.coefficients[i], 0.0);
      if (fit.coefficients[i] == 0.0) {
        ++held;
        EXPECT_LE(slope[i], 1e-8);
      } else {
        EXPECT_NEAR(slope[i], 0.0, 1e-8);
      }
    }
    EXPECT_NEAR(sum_of_squares(problem, fit), best_by_trying_all(problem), 1e-9);
  }
  EXPECT_GT(held, 60);  // the bound was really met
}

TEST(NonNegative, EqualsPlainLeastSquaresWhereThatIsPositive) {
  SeededNoise noise(11);
  for (int trial = 0; trial < 20; ++trial) {
    LinearProblem problem = random_problem(noise, 30, 4);
    problem.weights.clear();
    for (int row = 0; row < problem.rows(); ++row) {
      double sum = noise.normal(0.05);
      for (const double value : row_of(problem, row)) {
        sum += 2.0 * value;
      }
      problem.observed[static_cast<std::size_t>(row)] = sum;
      problem.weights.push_back(noise.uniform(0.5, 2.0));
    }
    const LinearFit plain = fit_least_squares(problem);
    const LinearFit fit = fit_non_negative(problem);
    for (std::size_t i = 0; i < 4; ++i) {
      EXPECT_NEAR(fit.coefficients[i], plain.coefficients[i], 1e-10);
    }
    EXPECT_NEAR(fit.residual_sd, plain.residual_sd, 1e-10);
  }
}

TEST(NonNegative, WithNothingToGainAllStayAtZero) {
  LinearProblem problem;
  problem.coefficients = 2;
  problem.add(std::array{1.0, 0.5}, -1.0);
  problem.add(std::array{0.5, 1.0}, -2.0);
  problem.add(std::array{1.0, 1.0}, -1.0);
  const LinearFit fit = fit_non_negative(problem);
  ASSERT_TRUE(fit.solved);
  EXPECT_EQ(fit.coefficients, (std::vector<double>{0.0, 0.0}));
}

TEST(NonNegative, TooFewRowsIsNotSolved) {
  LinearProblem problem;
  problem.coefficients = 2;
  problem.add(std::array{1.0, 0.5}, 1.0);
  EXPECT_FALSE(fit_non_negative(problem).solved);
}

}  // namespace
}  // namespace fogline
