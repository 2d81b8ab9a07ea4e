#include "numerics/least_squares.h"

#include <array>
#include <cmath>

#include <gtest/gtest.h>

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

// Four wild points of twelve, all on one side.
TEST(RobustFit, StandsAWildThird) {
  LinearProblem problem;
  problem.coefficients = 2;
  for (int i = 0; i < 12; ++i) {
    const bool wild = i % 3 == 0;
    problem.add(std::array{1.0, static_cast<double>(i)}, 3.0 + 0.5 * i + (wild ? 4.0 : 0.0));
  }
  const LinearFit robust = fit_robust(problem, 1e-3);
  ASSERT_TRUE(robust.solved);
  EXPECT_NEAR(robust.coefficients[0], 3.0, 1e-3);
  EXPECT_NEAR(robust.coefficients[1], 0.5, 1e-3);
  for (std::size_t i = 0; i < 12; ++i) {
    EXPECT_EQ(robust.row_weights[i] < 0.1, i % 3 == 0) << i;
  }
}

// Where all but one row fit exactly, the floor keeps a merely rounded row.
TEST(RobustFit, KeepsRoundedRowsAboveTheFloor) {
  LinearProblem problem;
  problem.coefficients = 1;
  for (int i = 0; i < 9; ++i) {
    problem.add(std::array{1.0}, i == 4 ? 2.01 : 2.0);
  }
  EXPECT_GT(fit_robust(problem, 0.01).row_weights[4], 0.5);
  EXPECT_LT(fit_robust(problem, 0.0001).row_weights[4], 0.1);
}

// A row of weight 3 counts as three equal rows.
TEST(LeastSquares, WeightsCountRows) {
  LinearProblem weighted;
  LinearProblem repeated;
  weighted.coefficients = repeated.coefficients = 2;
  constexpr std::array<std::array<double, 3>, 4> points{
      {{0.0, 1.0, 1.0}, {1.0, 3.5, 3.0}, {2.0, 4.0, 1.0}, {3.0, 7.5, 2.0}}};
  for (const auto& [x, y, weight] : points) {
    weighted.add(std::array{1.0, x}, y);
    weighted.weights.push_back(weight);
    for (int i = 0; i < static_cast<int>(weight); ++i) {
      repeated.add(std::array{1.0, x}, y);
    }
  }
  const LinearFit a = fit_least_squares(weighted);
  const LinearFit b = fit_least_squares(repeated);
  ASSERT_TRUE(a.solved && b.solved);
  EXPECT_NEAR(a.coefficients[0], b.coefficients[0], 1e-12);
  EXPECT_NEAR(a.coefficients[1], b.coefficients[1], 1e-12);
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
  EXPECT_FALSE(fit_robust(problem, 0.01).solved);
}

// The step wedge on the calibration page of the University of South Florida's film library DDSM
// (open research data): densities by a densitometer, mean codes by a film digitiser. The page's own
// line is log10(code) = 4.80662 - 1.07553 density; refitted from its table: 4.8066217, -1.0755289.
constexpr std::array wedge_density{0.04, 0.21, 0.34, 0.50, 0.69, 0.82, 0.96, 1.13,
                                   1.28, 1.44, 1.59, 1.74, 1.89, 2.07, 2.21, 2.37,
                                   2.52, 2.68, 2.84, 2.99, 3.13, 3.60};
constexpr std::array wedge_code{55722.0, 37201.0, 26986.0, 18445.0, 12569.0, 8296.0, 5648.0, 3797.0,
                                2603.0,  1772.0,  1217.0,  847.0,   581.0,   393.0,  271.0,  185.0,
                                132.0,   94.0,    65.0,    47.0,    34.0,    5.0};

LinearProblem wedge(std::size_t steps) {
  LinearProblem problem;
  problem.coefficients = 2;
  for (std::size_t i = 0; i < steps; ++i) {
    problem.add(std::array{1.0, wedge_density[i]}, std::log10(wedge_code[i]));
  }
  return problem;
}

TEST(LeastSquares, RepeatsAPublishedCalibration) {
  const LinearFit fit = fit_least_squares(wedge(wedge_density.size()));
  ASSERT_TRUE(fit.solved);
  EXPECT_NEAR(fit.coefficients[0], 4.8066217, 5e-8);
  EXPECT_NEAR(fit.coefficients[1], -1.0755289, 5e-8);
}

// Over the whole wedge the digitiser's darkest step is wrong by 0.3; over the sixteen steps that it
// reads well, the step of density 0.69 is 0.05 off while its neighbours agree within 0.015.
TEST(RobustFit, NamesTheWildStepsOfAWedge) {
  const LinearFit whole = fit_robust(wedge(22), 0.003);
  const LinearFit well_read = fit_robust(wedge(16), 0.003);
  ASSERT_TRUE(whole.solved && well_read.solved);
  for (std::size_t i = 0; i < 22; ++i) {
    EXPECT_EQ(whole.row_weights[i] < 0.1, wedge_density[i] == 3.60) << wedge_density[i];
  }
  for (std::size_t i = 0; i < 16; ++i) {
    EXPECT_EQ(well_read.row_weights[i] < 0.1, wedge_density[i] == 0.69) << wedge_density[i];
  }
}

}  // namespace
}  // namespace fogline
