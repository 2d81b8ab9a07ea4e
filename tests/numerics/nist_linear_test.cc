// Linear regressions of the NIST Statistical Reference Datasets (public domain,
// https://www.itl.nist.gov/div898/strd/lls/lls.shtml): data and certified values of Norris,
// Pontius, Longley and Wampler1, as printed there and carried by many public test suites.

#include "numerics/least_squares.h"

#include <array>
#include <cmath>
#include <span>
#include <vector>

#include <gtest/gtest.h>

namespace fogline {
namespace {

struct Certified {
  std::vector<double> estimates;
  std::vector<double> deviations;
  double residual_sd = 0.0;
};

/// Relative agreement of every certified number to `digits` decimal digits.
void expect_certified(const LinearFit& fit, const Certified& certified, double digits) {
  ASSERT_TRUE(fit.solved);
  ASSERT_EQ(fit.coefficients.size(), certified.estimates.size());
  const double share = std::pow(10.0, -digits);
  for (std::size_t i = 0; i < certified.estimates.size(); ++i) {
    EXPECT_NEAR(fit.coefficients[i] / certified.estimates[i], 1.0, share) << "estimate " << i;
    EXPECT_NEAR(fit.standard_errors[i] / certified.deviations[i], 1.0, share) << "deviation " << i;
  }
  EXPECT_NEAR(fit.residual_sd / certified.residual_sd, 1.0, share);
}

LinearProblem polynomial(std::span<const double> x, std::span<const double> y, int degree) {
  LinearProblem problem;
  problem.coefficients = degree + 1;
  for (std::size_t i = 0; i < x.size(); ++i) {
    std::vector<double> row{1.0};
    for (int power = 1; power <= degree; ++power) {
      row.push_back(row.back() * x[i]);
    }
    problem.add(row, y[i]);
  }
  return problem;
}

constexpr std::array norris_x{0.2,   337.4, 118.2, 884.6, 10.1,  226.5, 666.3, 996.3, 448.6,
                              777.0, 558.2, 0.4,   0.6,   775.5, 666.9, 338.0, 447.5, 11.6,
                              556.0, 228.1, 995.8, 887.6, 120.2, 0.3,   0.3,   556.8, 339.1,
                              887.2, 999.0, 779.0, 11.1,  118.3, 229.2, 669.1, 448.9, 0.5};
constexpr std::array norris_y{0.1,   338.8, 118.1, 888.0, 9.2,   228.1, 668.5, 998.5, 449.1,
                              778.9, 559.2, 0.3,   0.1,   778.1, 668.8, 339.3, 448.9, 10.8,
                              557.7, 228.3, 998.0, 888.8, 119.6, 0.3,   0.6,   557.6, 339.3,
                              888.0, 998.5, 778.9, 10.2,  117.6, 228.9, 668.4, 449.2, 0.2};

TEST(NistLinear, Norris) {
  expect_certified(fit_least_squares(polynomial(norris_x, norris_y, 1)),
                   {{-0.262323073774029, 1.00211681802045},
                    {0.232818234301152, 0.429796848199937E-03},
                    0.884796396144373},
                   11.0);
}

// Loads of 150,000 to 3,000,000 twice over.
constexpr std::array pontius_y{
    0.11019, 0.21956, 0.32949, 0.43899, 0.54803, 0.65694, 0.76562, 0.87487, 0.98292, 1.09146,
    1.20001, 1.30822, 1.41599, 1.52399, 1.63194, 1.73947, 1.84646, 1.95392, 2.06128, 2.16844,
    0.11052, 0.22018, 0.32939, 0.43886, 0.54798, 0.65739, 0.76596, 0.87474, 0.98300, 1.09150,
    1.20004, 1.30818, 1.41613, 1.52408, 1.63159, 1.73965, 1.84696, 1.95445, 2.06177, 2.16829};

TEST(NistLinear, Pontius) {
  std::vector<double> x;
  for (std::size_t i = 0; i < pontius_y.size(); ++i) {
    x.push_back(150000.0 * static_cast<double>(i % 20 + 1));
  }
  expect_certified(fit_least_squares(polynomial(x, pontius_y, 2)),
                   {{0.673565789473684E-03, 0.732059160401003E-06, -0.316081871345029E-14},
                    {0.107938612033077E-03, 0.157817399981659E-09, 0.486652849992036E-16},
                    0.205177424076185E-03},
                   9.0);
}

constexpr double longley[16][7] = {{60323, 83.0, 234289, 2356, 1590, 107608, 1947},
                                   {61122, 88.5, 259426, 2325, 1456, 108632, 1948},
                                   {60171, 88.2, 258054, 3682, 1616, 109773, 1949},
                                   {61187, 89.5, 284599, 3351, 1650, 110929, 1950},
                                   {63221, 96.2, 328975, 2099, 3099, 112075, 1951},
                                   {63639, 98.1, 346999, 1932, 3594, 113270, 1952},
                                   {64989, 99.0, 365385, 1870, 3547, 115094, 1953},
                                   {63761, 100.0, 363112, 3578, 3350, 116219, 1954},
                                   {66019, 101.2, 397469, 2904, 3048, 117388, 1955},
                                   {67857, 104.6, 419180, 2822, 2857, 118734, 1956},
                                   {68169, 108.4, 442769, 2936, 2798, 120445, 1957},
                                   {66513, 110.8, 444546, 4681, 2637, 121950, 1958},
                                   {68655, 112.6, 482704, 3813, 2552, 123366, 1959},
                                   {69564, 114.2, 502601, 3931, 2514, 125368, 1960},
                                   {69331, 115.7, 518173, 4806, 2572, 127852, 1961},
                                   {70551, 116.9, 554894, 4007, 2827, 130081, 1962}};

TEST(NistLinear, Longley) {
  LinearProblem problem;
  problem.coefficients = 7;
  for (const auto& line : longley) {
    problem.add(std::array{1.0, line[1], line[2], line[3], line[4], line[5], line[6]}, line[0]);
  }
  expect_certified(fit_least_squares(problem),
                   {{-3482258.63459582, 15.0618722713733, -0.358191792925910E-01, -2.02022980381683,
                     -1.03322686717359, -0.511041056535807E-01, 1829.15146461355},
                    {890420.383607373, 84.9149257747669, 0.334910077722432E-01, 0.488399681651699,
                     0.214274163161675, 0.226073200069370, 455.478499142212},
                    304.854073561965},
                   9.0);
}

// y = 1 + x + ... + x^5 without any error: every coefficient is 1, every deviation 0.
TEST(NistLinear, Wampler1) {
  std::vector<double> x;
  std::vector<double> y;
  for (int i = 0; i <= 20; ++i) {
    x.push_back(i);
    double sum = 0.0;
    for (int power = 0; power <= 5; ++power) {
      sum += std::pow(i, power);
    }
    y.push_back(sum);
  }
  ASSERT_DOUBLE_EQ(y[20], 3368421.0);  // last line of the data
  const LinearFit fit = fit_least_squares(polynomial(x, y, 5));
  ASSERT_TRUE(fit.solved);
  for (const double coefficient : fit.coefficients) {
    EXPECT_NEAR(coefficient, 1.0, 1e-7);
  }
  EXPECT_LT(fit.residual_sd, 1e-7);
}

}  // namespace
}  // namespace fogline
