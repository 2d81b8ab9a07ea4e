#include "numerics/robust.h"

#include "base/seeded_noise.h"

#include <array>
#include <cmath>
#include <limits>
#include <vector>

#include <gtest/gtest.h>

namespace fogline {
namespace {

// Twelve gauge readings of NIST/SEMATECH e-Handbook 7.2.6.2, Percentiles: under the rule
// 1 + p (N - 1), which is type 7, their 90th percentile is 95.1957 (data and value written from
// memory; the value follows from the data: 95.1937 + 0.9 * 0.0022).
TEST(Percentile, IsType7) {
  constexpr std::array readings{95.1772, 95.1567, 95.1937, 95.1959, 95.1442, 95.0610,
                                95.1591, 95.1195, 95.1065, 95.0925, 95.1990, 95.1682};
  EXPECT_NEAR(percentile(readings, 0.90), 95.1957, 0.00005);
  EXPECT_DOUBLE_EQ(percentile(readings, 0.0), 95.0610);
  EXPECT_DOUBLE_EQ(percentile(readings, 1.0), 95.1990);
}

// Quartiles of 1 to 10 under type 7 (Hyndman & Fan 1996): 1 + 9 p.
TEST(Percentile, OfEvenlySpacedNumbers) {
  constexpr std::array numbers{7.0, 1.0, 10.0, 4.0, 2.0, 9.0, 3.0, 8.0, 5.0, 6.0};
  EXPECT_DOUBLE_EQ(percentile(numbers, 0.25), 3.25);
  EXPECT_DOUBLE_EQ(percentile(numbers, 0.75), 7.75);
  EXPECT_DOUBLE_EQ(median(numbers), 5.5);
}

TEST(Percentile, OfFewValues) {
  EXPECT_TRUE(std::isnan(percentile({}, 0.5)));
  EXPECT_TRUE(std::isnan(median({})));
  EXPECT_DOUBLE_EQ(percentile(std::array{4.5}, 0.98), 4.5);
  EXPECT_DOUBLE_EQ(percentile(std::array{1.0, 3.0}, -2.0), 1.0);
  EXPECT_DOUBLE_EQ(percentile(std::array{1.0, 3.0}, 2.0), 3.0);
}

// Spots without any light left are infinitely dense; a percentile among them is infinite too, never
// "not a number".
TEST(Percentile, OfInfiniteValues) {
  constexpr double infinite = std::numeric_limits<double>::infinity();
  EXPECT_DOUBLE_EQ(percentile(std::array{1.0, 2.0, infinite}, 0.25), 1.5);
  EXPECT_EQ(percentile(std::array{1.0, 2.0, infinite}, 0.75), infinite);
  EXPECT_EQ(median(std::array{infinite, 1.0, infinite, infinite}), infinite);
}

// 1 / Phi^-1(3/4): Phi of its reciprocal is three quarters.
TEST(MadToSd, IsTheNormalConsistencyFactor) {
  EXPECT_NEAR(0.5 * std::erfc(-1.0 / mad_to_sd / std::sqrt(2.0)), 0.75, 1e-14);
  EXPECT_NEAR(mad_to_sd, 1.4826, 0.00005);  // as printed by Hampel (1974)
}

TEST(RobustLocation, OfANormalSampleIsItsMeanAndDeviation) {
  SeededNoise noise(20260101);
  std::vector<double> sample;
  for (int i = 0; i < 20001; ++i) {
    sample.push_back(3.0 + noise.normal(0.7));
  }
  const LocationScale found = robust_location(sample);
  // Three standard errors: of the median 1.2533 sd / sqrt n, of the scale 1.167 sd / sqrt n.
  EXPECT_NEAR(found.location, 3.0, 3.0 * 1.2533 * 0.7 / std::sqrt(20001.0));
  EXPECT_NEAR(found.scale, 0.7, 3.0 * 1.167 * 0.7 / std::sqrt(20001.0));
}

TEST(RobustLocation, BarelyMovesForWildValues) {
  std::vector<double> sample;
  for (int i = 0; i < 100; ++i) {
    sample.push_back(i < 30 ? 1e6 : 1.0 + 0.001 * (i % 7));
  }
  const LocationScale found = robust_location(sample);
  EXPECT_NEAR(found.location, 1.003, 0.003);
  EXPECT_LT(found.scale, 0.01);
  EXPECT_TRUE(std::isnan(robust_location({}).location));
}

// The worked sample 1, 1, 2, 2, 4, 6, 9: median 2, deviations 1 1 0 0 2 4 7, their median 1.
TEST(RobustLocation, WorkedByHand) {
  const LocationScale found = robust_location(std::array{1.0, 1.0, 2.0, 2.0, 4.0, 6.0, 9.0});
  EXPECT_DOUBLE_EQ(found.location, 2.0);
  EXPECT_DOUBLE_EQ(found.scale, mad_to_sd);
}

}  // namespace
}  // namespace fogline
