#include "process/belief/usual_curve.h"

#include <cmath>
#include <stdexcept>

#include <gtest/gtest.h>

namespace fogline {
namespace {

TEST(UsualCurve, CrossesTheTwoArcsOnOneLine) {
  // Niederpruem, Nelson & Yule, Phot. Sci. Eng. 10 (1966): arcs of 0.2 and 2.2 about one centre on
  // the fog line. Crossings of index 0.58 at net 0.1003 and 1.1038, 0.1730 and 1.9031 from it.
  const UsualCurve curve({0.15, 2.7}, 0.58);
  const double lower = curve.log_h(0.1003);
  EXPECT_NEAR(curve.density(lower - 0.1730 + 1.9031), 1.1038, 5e-4);
}

TEST(UsualCurve, SoftToeWithoutShoulderHasTheKnownSlope) {
  // Density = a ln(1 + exp(b (x - x0))) with a 0.15 and b 4.2 has contrast index 0.5671 (own
  // calculation, by the construction above) and the limiting slope a b = 0.63.
  const UsualCurve curve({0.15, 1e3}, 0.5671);
  EXPECT_NEAR(curve.line_slope(), 0.63, 1e-3);
}

TEST(UsualCurve, SpeedPointIsAtZero) {
  for (const double contrast : {0.3, 0.58, 0.9}) {
    EXPECT_NEAR(UsualCurve({0.15, 2.7}, contrast).density(0.0), 0.10, 1e-9);
  }
}

TEST(UsualCurve, RisesAndTurnsBack) {
  const UsualCurve curve({0.10, 2.2}, 0.7);
  double before = -1.0;
  for (double log_h = -3.0; log_h < 5.0; log_h += 0.05) {
    const double density = curve.density(log_h);
    EXPECT_GE(density, before);
    EXPECT_LE(density, 2.2);
    before = density;
  }
  for (const double density : {0.01, 0.1, 0.5, 1.0, 2.0}) {
    EXPECT_NEAR(curve.density(curve.log_h(density)), density, 1e-9);
  }
}

TEST(UsualCurve, RefusesWhatCannotBe) {
  EXPECT_THROW(UsualCurve({0.15, 0.5}, 0.58), std::invalid_argument);
  EXPECT_THROW(UsualCurve({0.15, 2.7}, 0.0), std::invalid_argument);
}

}  // namespace
}  // namespace fogline
