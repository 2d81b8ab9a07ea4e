#include "marks/weigh_sign.h"

#include <cmath>

#include <gtest/gtest.h>

namespace fogline {
namespace {

constexpr SignWeight pro{2.0, 3.0};
constexpr SignWeight contra{2.0, -3.0};

TEST(WeighSign, AtEvenASignSaysNothing) {
  for (const SignWeight& sign : {pro, contra}) {
    EXPECT_EQ(weighed(sign, 2.0), 0.0);
    EXPECT_EQ(weighed_beyond(sign, 2.0), 0.0);
    EXPECT_EQ(log_weighed(sign, 2.0), 0.0);
  }
}

TEST(WeighSign, SpeaksForAndAgainst) {
  EXPECT_DOUBLE_EQ(weighed(pro, 4.0), 6.0);
  EXPECT_DOUBLE_EQ(weighed(pro, 1.0), -3.0);
  EXPECT_DOUBLE_EQ(weighed(contra, 4.0), -6.0);
}

TEST(WeighSign, BeyondSpeaksOnOneSideOnly) {
  EXPECT_DOUBLE_EQ(weighed_beyond(contra, 4.0), -6.0);
  EXPECT_EQ(weighed_beyond(contra, 1.0), 0.0);
  EXPECT_EQ(weighed_beyond(contra, -100.0), 0.0);
}

// Twice the value counts the same wherever it starts.
TEST(WeighSign, LogarithmCountsRatios) {
  EXPECT_NEAR(log_weighed(pro, 4.0), 3.0 * std::log(2.0), 1e-12);
  EXPECT_NEAR(log_weighed(pro, 1.0), -3.0 * std::log(2.0), 1e-12);
  EXPECT_NEAR(log_weighed(pro, 80.0) - log_weighed(pro, 40.0), 3.0 * std::log(2.0), 1e-12);
}

// A sign may be missing altogether: it then speaks strongly, not without end.
TEST(WeighSign, LogarithmOfNothingIsFinite) {
  EXPECT_TRUE(std::isfinite(log_weighed(pro, 0.0)));
  EXPECT_LT(log_weighed(pro, 0.0), log_weighed(pro, 0.01));
}

}  // namespace
}  // namespace fogline
