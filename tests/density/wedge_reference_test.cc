#include <fogline/density/scanner_calibration.h>

#include <gtest/gtest.h>

namespace fogline {
namespace {

// A commercial 21-step tablet runs from 0.05 to 3.05 in steps of 0.15 (pages of its makers).
TEST(NominalWedge, TwentyOneStepsOfFifteenHundredths) {
  const WedgeReference wedge = nominal_wedge(21, 0.15);
  ASSERT_EQ(wedge.steps.size(), 21U);
  EXPECT_NEAR(wedge.steps.front().density, 0.05, 1e-12);
  EXPECT_NEAR(wedge.steps.back().density, 3.05, 1e-12);
  EXPECT_TRUE(wedge.nominal);
  EXPECT_EQ(wedge.name, "21x0.15");
  EXPECT_EQ(wedge.steps[4].label, "5");
}

}  // namespace
}  // namespace fogline
