#include "density/skewed_interval.h"

#include <algorithm>
#include <cmath>
#include <cstdint>
#include <random>
#include <vector>

#include <gtest/gtest.h>

namespace fogline {
namespace {

// JCGM 101:2008 clause 7: a Monte Carlo of 10^6 draws gives the end points to about 0.3 % of the
// interval's width; the generator's seed is fixed.
TEST(SkewedInterval, AgreesWithAMonteCarlo) {
  struct Case {
    double density;
    double transmittance;
    double rest;
  };
  for (const Case& one : {Case{2.0, 0.001, 0.01}, Case{2.5, 0.0006, 0.03}, Case{3.0, 0.0004, 0.02},
                          Case{1.0, 0.002, 0.05}}) {
    std::mt19937_64 random(20);
    std::normal_distribution<double> normal;
    std::vector<double> drawn;
    constexpr std::size_t draws = 1'000'000;
    for (std::size_t i = 0; i < draws; ++i) {
      const double light = std::pow(10.0, -one.density) + one.transmittance * normal(random);
      drawn.push_back(-std::log10(std::max(1e-5, light)) + one.rest * normal(random));
    }
    std::sort(drawn.begin(), drawn.end());
    const double lower = drawn[draws / 40];
    const double upper = drawn[draws - draws / 40];
    const DensityInterval told = skewed_interval(one.density, one.transmittance, one.rest);
    EXPECT_NEAR(told.lower95, lower, 0.01 * (upper - lower)) << one.density;
    EXPECT_NEAR(told.upper95, upper, 0.01 * (upper - lower)) << one.density;
  }
}

// JCGM 100 clause 5.1: where the light is certain the interval is the symmetric one, 1.96 u.
TEST(SkewedInterval, IsSymmetricWhereTheLogarithmIsStraight) {
  const DensityInterval told = skewed_interval(0.5, 0.0, 0.02);
  EXPECT_NEAR(told.lower95, 0.5 - 1.95996 * 0.02, 1e-5);
  EXPECT_NEAR(told.upper95, 0.5 + 1.95996 * 0.02, 1e-5);
}

TEST(SkewedInterval, ReachesFurtherUpThanDown) {
  const DensityInterval told = skewed_interval(2.5, 0.001, 0.01);
  EXPECT_GT(told.upper95 - 2.5, 1.5 * (2.5 - told.lower95));
  EXPECT_LE(skewed_interval(3.0, 0.01, 0.01).upper95, deepest_density);
}

}  // namespace
}  // namespace fogline
