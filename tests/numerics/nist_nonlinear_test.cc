// Nonlinear regressions of the NIST Statistical Reference Datasets (public domain,
// https://www.itl.nist.gov/div898/strd/nls/nls_main.shtml): data, starts and certified values of
// Misra1a, BoxBOD and Rat43, as printed there and carried by many public test suites.

#include "numerics/nonlinear_fit.h"

#include <cmath>
#include <functional>
#include <vector>

#include <gtest/gtest.h>

namespace fogline {
namespace {

using Values = std::vector<double>;

struct Dataset {
  Values x;
  Values y;
  /// The model's value and its derivatives by the parameters.
  std::function<double(double x, std::span<const double> b)> model;
  std::function<Values(double x, std::span<const double> b)> derivatives;
};

struct Certified {
  Values estimates;
  Values deviations;
  double sum_of_squares = 0.0;
};

NonlinearFit fit(const Dataset& data, const Values& start) {
  NonlinearProblem problem;
  problem.residuals = static_cast<int>(data.x.size());
  problem.start = start;
  problem.residual_of = [&](std::span<const double> b, std::span<double> residual) {
    for (std::size_t i = 0; i < data.x.size(); ++i) {
      residual[i] = data.y[i] - data.model(data.x[i], b);
    }
  };
  problem.derivative_of = [&](std::span<const double> b, std::span<double> derivative) {
    for (std::size_t i = 0; i < data.x.size(); ++i) {
      const Values by = data.derivatives(data.x[i], b);
      for (std::size_t k = 0; k < by.size(); ++k) {
        derivative[k * data.x.size() + i] = -by[k];
      }
    }
  };
  return fit_nonlinear(problem);
}

void expect_certified(const NonlinearFit& fit, const Certified& certified) {
  ASSERT_TRUE(fit.solved);
  const Values errors = fit.standard_errors();
  for (std::size_t i = 0; i < certified.estimates.size(); ++i) {
    EXPECT_NEAR(fit.parameters[i] / certified.estimates[i], 1.0, 1e-6) << "estimate " << i;
    EXPECT_NEAR(errors[i] / certified.deviations[i], 1.0, 1e-4) << "deviation " << i;
  }
  EXPECT_NEAR(fit.sum_of_squares / certified.sum_of_squares, 1.0, 1e-8);
}

Dataset saturating(Values x, Values y) {
  return {std::move(x), std::move(y),
          [](double at, std::span<const double> b) { return b[0] * (1.0 - std::exp(-b[1] * at)); },
          [](double at, std::span<const double> b) {
            return Values{1.0 - std::exp(-b[1] * at), b[0] * at * std::exp(-b[1] * at)};
          }};
}

TEST(NistNonlinear, Misra1aFromBothStarts) {
  const Dataset data = saturating({77.6, 114.9, 141.1, 190.8, 239.9, 289.0, 332.8, 378.4, 434.8,
                                   477.3, 536.8, 593.1, 689.1, 760.0},
                                  {10.07, 14.73, 17.94, 23.93, 29.61, 35.18, 40.02, 44.82, 50.76,
                                   55.05, 61.01, 66.40, 75.47, 81.78});
  const Certified certified{
      {238.94212918, 5.5015643181E-04}, {2.7070075241, 7.2668688436E-06}, 0.12455138894};
  expect_certified(fit(data, {500.0, 1e-4}), certified);
  expect_certified(fit(data, {250.0, 5e-4}), certified);
}

TEST(NistNonlinear, BoxBodFromTheNearerStart) {
  const Dataset data = saturating({1, 2, 3, 5, 7, 10}, {109, 149, 149, 191, 213, 224});
  const Certified certified{
      {213.80940889, 0.54723748542}, {12.354515176, 0.10455993237}, 1168.0088766};
  expect_certified(fit(data, {100.0, 0.75}), certified);
}

// A growth curve with a shoulder: b1 / (1 + exp(b2 - b3 x))^(1 / b4).
TEST(NistNonlinear, Rat43FromBothStarts) {
  Dataset data;
  data.y = {16.08,  33.83,  65.80,  97.20,  191.55, 326.20, 386.87, 520.53,
            590.03, 651.92, 724.93, 699.56, 689.96, 637.56, 717.41};
  for (int i = 1; i <= 15; ++i) {
    data.x.push_back(i);
  }
  data.model = [](double x, std::span<const double> b) {
    return b[0] / std::pow(1.0 + std::exp(b[1] - b[2] * x), 1.0 / b[3]);
  };
  data.derivatives = [](double x, std::span<const double> b) {
    const double e = std::exp(b[1] - b[2] * x);
    const double root = std::pow(1.0 + e, -1.0 / b[3]);
    const double by_e = -b[0] / b[3] * root / (1.0 + e);
    return Values{root, by_e * e, -by_e * e * x, b[0] * root * std::log(1.0 + e) / (b[3] * b[3])};
  };
  const Certified certified{
      {6.9964151270E+02, 5.2771253025E+00, 7.5962938329E-01, 1.2792483859E+00},
      {1.6302297817E+01, 2.0828735829E+00, 1.9566123451E-01, 6.8761936385E-01},
      8.7864049080E+03};
  expect_certified(fit(data, {100.0, 10.0, 1.0, 1.0}), certified);
  expect_certified(fit(data, {700.0, 5.0, 0.75, 1.3}), certified);
}

}  // namespace
}  // namespace fogline
