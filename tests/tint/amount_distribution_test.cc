#include "tint/amount_distribution.h"

#include <cmath>

#include <gtest/gtest.h>

namespace fogline {
namespace {

TEST(AmountDistribution, GivesQuantilesOfALogUniform) {
  AmountDistribution amounts;
  constexpr int count = 20000;
  for (int i = 0; i < count; ++i) {
    amounts.add(0.02 * std::pow(10.0, (i + 0.5) / count), 2.0 / count);
  }
  EXPECT_NEAR(amounts.total(), 2.0, 1e-9);
  for (const double share : {0.025, 0.5, 0.975}) {
    const double exact = 0.02 * std::pow(10.0, share);
    EXPECT_NEAR(amounts.quantile(share), exact, 0.013 * exact);
    EXPECT_NEAR(amounts.below(exact), 2.0 * share, 0.02);
  }
}

TEST(AmountDistribution, ScalesItsWeight) {
  AmountDistribution amounts;
  amounts.add(0.1, 3.0);
  amounts.scale(0.25);
  EXPECT_DOUBLE_EQ(amounts.total(), 0.75);
  EXPECT_DOUBLE_EQ(amounts.below(1.0), 0.75);
  EXPECT_DOUBLE_EQ(amounts.below(0.05), 0.0);
}

TEST(AmountDistribution, HoldsWildAmountsAtItsEnds) {
  AmountDistribution amounts;
  amounts.add(0.001, 1.0);
  amounts.add(50.0, 1.0);
  EXPECT_NEAR(amounts.quantile(0.25), 0.01, 0.001);
  EXPECT_NEAR(amounts.quantile(0.75), 1.3, 0.02);
}

}  // namespace
}  // namespace fogline
