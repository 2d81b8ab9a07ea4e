// Curves beside those of a general-purpose library (values in tests/reference, with their script).
#include "reference/scipy_curves.h"

#include "base/within_doubt.h"
#include "reference_curves.h"
#include "sensitometry/curve_constructions.h"

#include <fogline/sensitometry/characteristic_curve.h>
#include <fogline/sensitometry/sensitometry.h>

#include <gtest/gtest.h>

namespace fogline {
namespace {

namespace scipy = reference::scipy;

template <typename Densities>
FittedCurve curve_through(const Densities& density, double doubt) {
  ExposedSteps exposed;
  for (std::size_t i = 0; i < scipy::log_h.size(); ++i) {
    exposed.steps.push_back({"", scipy::log_h[i], 0.0, density[i], doubt, {}});
  }
  exposed.base_fog = scipy::base;
  exposed.base_fog_doubt = 0.002;
  auto outcome = fit_characteristic_curve(exposed);
  EXPECT_TRUE(outcome);
  return *outcome;
}

TEST(CurveBesideSciPy, RunsAsMonotoneInterpolationThroughExactSteps) {
  const FittedCurve curve = curve_through(scipy::exact_density, 0.001);
  for (std::size_t i = 0; i < scipy::between_log_h.size(); ++i) {
    const double net = curve.mean.density_at(scipy::between_log_h[i]);
    EXPECT_NEAR(net, scipy::pchip_net[i], 0.004) << scipy::between_log_h[i];
    EXPECT_NEAR(net, scipy::film_net[i], 0.003) << scipy::between_log_h[i];
  }
  EXPECT_NEAR(two_arcs(curve.mean)->contrast_index, scipy::pchip_contrast_index, 0.004);
  EXPECT_NEAR(two_arcs(curve.mean)->contrast_index, scipy::film_contrast_index, 0.003);
}

// Least squares knows the film's own form; the program doesn't, so it may differ within its doubt.
TEST(CurveBesideSciPy, RunsAsLeastSquaresThroughNoisySteps) {
  const FittedCurve curve = curve_through(scipy::noisy_density, 0.008);
  for (std::size_t i = 0; i < scipy::between_log_h.size(); ++i) {
    EXPECT_NEAR(curve.mean.density_at(scipy::between_log_h[i]), scipy::least_squares_net[i], 0.012)
        << scipy::between_log_h[i];
  }
  const auto index = read_curve(curve).contrast_index;
  ASSERT_TRUE(index);
  EXPECT_NEAR(index->value, scipy::least_squares_contrast_index, 0.010);
  test::expect_within_doubt(*index, scipy::film_contrast_index, 0.05);
}

// The construction alone, on the film's own form.
TEST(CurveBesideSciPy, LaysTheTwoArcsAlike) {
  const CurveTable table = table_of(
      [](double x) {
        const double line = SoftToe{0.13, 4.8, -2.0}(x);
        return line / std::pow(1.0 + std::pow(line / 2.4, 3.0), 1.0 / 3.0);
      },
      -4.0, 1.5);
  EXPECT_NEAR(two_arcs(table)->contrast_index, scipy::film_contrast_index, 2e-4);
}

}  // namespace
}  // namespace fogline
