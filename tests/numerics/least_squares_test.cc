#include <array>

#include <gtest/gtest.h>

#include <fogline/numerics/least_squares.h>

namespace fogline {
namespace {

// A straight line with one wild point: the robust fit drops it, the plain one is bent by it.
TEST(RobustFit, DropsAWildPoint) {
  LinearProblem problem;
  problem.coefficients = 2;
  for (int i = 0; i < 12; ++i) {
    const double x = i;
    problem.add(std::array{1.0, x}, 3.0 + 0.5 * x + (i == 9 ? 4.0 : 0.001 * (i % 3)));
  }
  const LinearFit robust = fit_robust(problem, 1e-3);
  const LinearFit plain = fit_least_squares(problem);
  ASSERT_TRUE(robust.solved);
  ASSERT_TRUE(plain.solved);
  EXPECT_NEAR(robust.coefficients[1], 0.5, 1e-3);
  EXPECT_GT(std::abs(plain.coefficients[1] - 0.5), 0.05);
  EXPECT_LT(robust.row_weights[9], 0.1);
}

TEST(LeastSquares, TooFewRowsIsNotSolved) {
  LinearProblem problem;
  problem.coefficients = 2;
  problem.add(std::array{1.0, 2.0}, 1.0);
  EXPECT_FALSE(fit_least_squares(problem).solved);
}

TEST(LeastSquares, DependentBasisIsNotSolved) {
  LinearProblem problem;
  problem.coefficients = 2;
  for (int i = 0; i < 5; ++i) {
    problem.add(std::array{1.0, 2.0}, i);
  }
  EXPECT_FALSE(fit_least_squares(problem).solved);
}

}  // namespace
}  // namespace fogline
