#include <fogline/sensitometry/characteristic_curve.h>

#include <cmath>
#include <functional>

#include <gtest/gtest.h>

namespace fogline {
namespace {

class EveryFamily : public testing::TestWithParam<ShapeFamily> {
 protected:
  [[nodiscard]] CurveShape shape() const { return {GetParam(), 0.62, -1.9, 0.22, 2.1, 0.3}; }
};

TEST_P(EveryFamily, RisesFromNothingToItsGreatestDensity) {
  double before = -1.0;
  for (double log_h = -6.0; log_h < 8.0; log_h += 0.05) {
    const double density = shaped_density(shape(), log_h).density;
    EXPECT_GE(density, before - 1e-12);  // to the last digits
    before = density;
  }
  EXPECT_NEAR(shaped_density(shape(), -60.0).density, 0.0, 0.01);
  EXPECT_NEAR(before, 2.1, 0.05);
}

TEST(JoinedByBends, FollowsTheStraightLineBetweenToeAndShoulder) {
  for (const ShapeFamily family :
       {ShapeFamily::logistic, ShapeFamily::normal, ShapeFamily::hyperbolic}) {
    const CurveShape shape{family, 0.62, -1.9, 0.22, 2.1, 0.3};
    EXPECT_NEAR(shaped_density(shape, -0.3).density, 0.62 * 1.6, 0.06);
  }
}

// p = 1: the growth curve that Verhulst (1838) called logistic, in closed form.
TEST(DispersedGrains, AreALogisticWhereTheSIsSymmetric) {
  const CurveShape shape{ShapeFamily::dispersed_grains, 0.62, -1.9, 0.22, 2.1, symmetric_shoulder};
  const double middle = -1.9 + 0.5 * 2.1 / 0.62;
  for (const double log_h : {-4.0, -2.0, -1.0, 0.3, 2.0}) {
    EXPECT_NEAR(shaped_density(shape, log_h).density,
                2.1 / (1.0 + std::exp(-4.0 * 0.62 * (log_h - middle) / 2.1)), 1e-12);
  }
}

// p great, all grains alike: 1 - exp(-H^n), steepest at H^n = 1 (Weibull 1951).
TEST(DispersedGrains, AreOneSensitivityWhereTheShoulderIsSharp) {
  const CurveShape shape{ShapeFamily::dispersed_grains, 0.62, -1.9, 0.22, 2.1, 1e-7};
  const double width = 2.1 / (0.62 * std::exp(1.0));
  const double steepest = -1.9 + (1.0 - std::exp(-1.0)) * 2.1 / 0.62;
  for (const double log_h : {-3.0, -1.0, 0.3, 1.2}) {
    EXPECT_NEAR(shaped_density(shape, log_h).density,
                2.1 * (1.0 - std::exp(-std::exp((log_h - steepest) / width))), 1e-5);
  }
}

// Derivatives beside differences.
TEST_P(EveryFamily, TellsItsDerivatives) {
  constexpr double h = 1e-5;
  for (const double log_h : {-3.0, -2.0, -1.6, -0.5, 1.0, 2.5}) {
    const ShapedDensity at = shaped_density(shape(), log_h);
    const auto slope = [&](const std::function<void(CurveShape&, double)>& change) {
      CurveShape less = shape();
      CurveShape more = shape();
      change(less, -h);
      change(more, h);
      return (shaped_density(more, log_h).density - shaped_density(less, log_h).density) /
             (2.0 * h);
    };
    EXPECT_NEAR(
        at.by_log_h,
        (shaped_density(shape(), log_h + h).density - shaped_density(shape(), log_h - h).density) /
            (2.0 * h),
        1e-7);
    EXPECT_NEAR(at.by_log_slope, slope([](CurveShape& s, double d) { s.slope *= std::exp(d); }),
                1e-7);
    EXPECT_NEAR(at.by_inertia, slope([](CurveShape& s, double d) { s.inertia_log_h += d; }), 1e-7);
    EXPECT_NEAR(at.by_log_toe, slope([](CurveShape& s, double d) { s.toe_width *= std::exp(d); }),
                1e-7);
    EXPECT_NEAR(at.by_log_greatest,
                slope([](CurveShape& s, double d) { s.greatest_density *= std::exp(d); }), 1e-7);
    EXPECT_NEAR(at.by_log_shoulder,
                slope([](CurveShape& s, double d) { s.shoulder_width *= std::exp(d); }), 1e-7);
  }
}

INSTANTIATE_TEST_SUITE_P(Families, EveryFamily, testing::ValuesIn(shape_families));

}  // namespace
}  // namespace fogline
