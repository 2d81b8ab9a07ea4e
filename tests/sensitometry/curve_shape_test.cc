#include <fogline/sensitometry/curve_shape.h>

#include <cmath>
#include <functional>

#include <gtest/gtest.h>

namespace fogline {
namespace {

class EveryFamily : public testing::TestWithParam<BendFamily> {
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

TEST_P(EveryFamily, FollowsTheStraightLineBetweenToeAndShoulder) {
  EXPECT_NEAR(shaped_density(shape(), -0.3).density, 0.62 * 1.6, 0.06);
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

INSTANTIATE_TEST_SUITE_P(Families, EveryFamily, testing::ValuesIn(bend_families));

}  // namespace
}  // namespace fogline
