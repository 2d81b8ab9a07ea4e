#include "density/callier.h"

#include <cmath>
#include <limits>

#include <gtest/gtest.h>

namespace fogline {
namespace {

TEST(Callier, DiffuseLightChangesNothing) {
  for (const double density : {-0.1, 0.0, 0.3, 2.0}) {
    EXPECT_EQ(directed_density(density, 1.0), density);
    EXPECT_EQ(diffuse_density(density, 1.0), density);
    EXPECT_EQ(directed_slope(density, 1.0), 1.0);
  }
}

// Callier's factor is the quotient of both densities (ISO 5-2): by hand at one knee,
// 0.3 (1 + 0.3 (1 - 1 / e)), and far above it 2 times 1.3.
TEST(Callier, FactorRisesToItsFullSize) {
  EXPECT_NEAR(directed_density(0.3, 1.3), 0.3 * (1.0 + 0.3 * (1.0 - std::exp(-1.0))), 1e-12);
  EXPECT_NEAR(directed_density(2.0, 1.3), 2.6, 1e-3);
  EXPECT_EQ(directed_density(0.0, 1.3), 0.0);
}

TEST(Callier, ComesBackFromEveryDensity) {
  for (const double callier : {1.02, 1.15, 1.4, 2.0}) {
    const DiffuseScale scale(callier);
    for (double density = -0.5; density < 7.0; density += 0.013) {
      const double directed = directed_density(density, callier);
      EXPECT_NEAR(diffuse_density(directed, callier), density, 1e-9) << callier;
      EXPECT_NEAR(scale.of_directed(directed), density, 3e-5) << callier;
    }
    EXPECT_EQ(scale.of_directed(std::numeric_limits<double>::infinity()),
              std::numeric_limits<double>::infinity());
    EXPECT_TRUE(std::isnan(scale.of_directed(std::nan(""))));
  }
}

TEST(Callier, SlopeIsTheDifferenceQuotient) {
  constexpr double h = 1e-6;
  for (const double density : {0.05, 0.3, 0.9, 2.5}) {
    const double quotient =
        (directed_density(density + h, 1.3) - directed_density(density - h, 1.3)) / (2.0 * h);
    EXPECT_NEAR(directed_slope(density, 1.3), quotient, 1e-8);
  }
}

}  // namespace
}  // namespace fogline
