#include "base/seeded_noise.h"

#include <fogline/base/quantity.h>
#include <fogline/density/doubt.h>

#include <cmath>

#include <gtest/gtest.h>

namespace fogline {
namespace {

DoubtSources usual_sources() {
  DoubtSources sources;
  sources.zero_density = 0.01;
  sources.stray_transmittance = 0.002;
  sources.transfer_share = 0.02;
  sources.angle_share_95 = 0.08;
  return sources;
}

TEST(Doubt, WithoutSourcesIsNothing) {
  for (const double density : {0.0, 0.3, 1.0, 2.5}) {
    EXPECT_EQ(u95_of_density({}, density, density), 0.0);
  }
  EXPECT_EQ(u95_of_range({}, 0.3, 1.4), 0.0);
  const Quantity quantity = quantity_of_density({}, 0.7, 0.4);
  EXPECT_EQ(quantity.value, 0.7);
  EXPECT_EQ(quantity.u95, 0.0);
  EXPECT_FALSE(quantity.at_least);
  EXPECT_FALSE(quantity.lower95.has_value());
}

TEST(Doubt, GrowsWithDensity) {
  double before = 0.0;
  for (double density = 0.0; density <= 3.5; density += 0.1) {
    const double now = u95_of_density(usual_sources(), density, density);
    EXPECT_GT(now, before) << density;
    before = now;
  }
  before = 0.0;
  for (double high = 0.5; high <= 3.5; high += 0.1) {
    const double now = u95_of_range(usual_sources(), 0.4, high);
    EXPECT_GT(now, before) << high;
    before = now;
  }
}

// Each source alone, by hand: 1.96 standard uncertainties; stray light s moves a density by
// s 10^D / ln 10; the angle of light is a 95 % half width of silver alone.
TEST(Doubt, OfEachSourceAlone) {
  DoubtSources zero;
  zero.zero_density = 0.01;
  EXPECT_NEAR(u95_of_density(zero, 1.3, 1.0), 0.0196, 1e-12);
  DoubtSources stray;
  stray.stray_transmittance = 0.001;
  EXPECT_NEAR(u95_of_density(stray, 2.0, 1.7), 1.96 * 0.1 / std::log(10.0), 1e-12);
  DoubtSources curve;
  curve.transfer_share = 0.02;
  EXPECT_NEAR(u95_of_density(curve, 1.5, 1.2), 1.96 * 0.03, 1e-12);
  DoubtSources angle;
  angle.angle_share_95 = 0.17;
  EXPECT_NEAR(u95_of_density(angle, 1.3, 1.0), 0.17, 1e-12);
  EXPECT_EQ(u95_of_density(angle, 0.3, 0.0), 0.0);
}

// What only can have made a density read low skews the interval upward.
TEST(Doubt, ClippedLightSkewsUpward) {
  DoubtSources sources = usual_sources();
  sources.clipped_shift_density = 0.05;
  const Quantity quantity = quantity_of_density(sources, 0.8, 0.5);
  ASSERT_TRUE(quantity.lower95 && quantity.upper95);
  EXPECT_GT(*quantity.upper95 - quantity.value, quantity.value - *quantity.lower95);
  EXPECT_GE(*quantity.upper95 - quantity.value, 0.05);
  EXPECT_NEAR(quantity.value - *quantity.lower95, u95_of_density(usual_sources(), 0.8, 0.5), 1e-12);
}

TEST(Doubt, LimitLiesBelowReach) {
  for (const double stray : {0.0, 0.0005, 0.003, 0.02}) {
    DoubtSources sources;
    sources.stray_transmittance = stray;
    EXPECT_LT(density_limit(sources), density_reach(sources)) << stray;
    if (stray > 0.0) {
      EXPECT_NEAR(u95_of_density(sources, density_limit(sources), 0.0), 0.1, 1e-9);
      EXPECT_NEAR(u95_of_density(sources, density_reach(sources), 0.0), 0.45, 1e-9);
    }
  }
  DoubtSources little;
  little.stray_transmittance = 0.0005;
  DoubtSources much;
  much.stray_transmittance = 0.02;
  EXPECT_GT(density_limit(little), density_limit(much));
}

// JCGM 100:2008 H.1, the end gauge: four parts of 25, 9.7, 2.9 and 16.6 nm combine to 32 nm (values
// from memory). Here a nanometre is a thousandth of a density.
TEST(Doubt, CombinesAsTheEndGaugeOfTheGuide) {
  DoubtSources sources;
  sources.noise_density = 0.025;
  sources.zero_density = 0.0097;
  sources.evenness_density = 0.0029;
  sources.transfer_share = 0.0166;
  EXPECT_NEAR(u95_of_density(sources, 1.0, 0.0) / coverage_factor_95, 0.032, 0.0005);
  double squares = 0.0;
  double common = 0.0;
  for (const BudgetLine& line : budget_of_density(sources, 1.0, 0.0)) {
    squares += line.standard_density * line.standard_density;
    common += line.common ? line.standard_density * line.standard_density : 0.0;
  }
  EXPECT_NEAR(std::sqrt(squares), 0.0317, 0.0001);
  // The tone curve is the scanner's, the rest the roll's own.
  EXPECT_NEAR(quantity_of_density(sources, 1.0, 0.0).u95_common.value_or(0.0),
              coverage_factor_95 * std::sqrt(common), 1e-12);
  EXPECT_NEAR(std::sqrt(common), 0.0166, 1e-12);
}

// Near the limit the light may be anything down to none: the interval reaches further up.
TEST(Doubt, NearTheLimitTheIntervalIsSkewed) {
  DoubtSources sources;
  sources.stray_transmittance = 0.0005;
  const Quantity light = quantity_of_density(sources, 0.8, 0.0);
  EXPECT_FALSE(light.lower95 || light.upper95);
  const Quantity dense = quantity_of_density(sources, 2.8, 0.0);
  ASSERT_TRUE(dense.lower95 && dense.upper95);
  EXPECT_GT(*dense.upper95 - dense.value, 1.5 * (dense.value - *dense.lower95));
}

struct Draw {
  double low = 0.0;
  double high = 0.0;
};

/// What a scan with errors drawn from `sources` reads of two densities on one base of 0.3.
Draw reading_of(const DoubtSources& sources, SeededNoise& noise, double low, double high) {
  const double zero = noise.normal(sources.zero_density);
  const double stray = noise.normal(sources.stray_transmittance);
  const double curve = 1.0 + noise.normal(sources.transfer_share);
  const double angle = noise.normal(sources.angle_share_95 / coverage_factor_95);
  const auto read = [&](double density) {
    const double bent = density + angle * (density - 0.3);
    const double seen = transmittance_from_density(bent) + stray;
    return curve * density_from_transmittance(seen) + zero;
  };
  return {read(low), read(high)};
}

// 20,000 scans with independent normal errors: 95 in 100 intervals hold the truth. Four standard
// errors of a share of 0.95 are 0.6 %; where stray light is a sixth of the light, its logarithm is
// no longer straight, which costs up to 1 %.
TEST(Doubt, CoversTheTruth95TimesIn100) {
  constexpr int scans = 20000;
  SeededNoise noise(42);
  const DoubtSources sources = usual_sources();
  for (const double density : {0.3, 0.8, 1.4, 1.9}) {
    int covered = 0;
    for (int i = 0; i < scans; ++i) {
      const Draw draw = reading_of(sources, noise, density, density);
      const double u95 = u95_of_density(sources, draw.low, draw.low - 0.3);
      covered += std::abs(draw.low - density) <= u95 ? 1 : 0;
    }
    const double tolerance = density < 1.5 ? 0.006 : 0.016;
    EXPECT_NEAR(static_cast<double>(covered) / scans, 0.95, tolerance) << density;
  }
}

// A range needs no zero: its interval may be wide, never too narrow.
TEST(Doubt, OfARangeCoversTheTruth) {
  constexpr int scans = 20000;
  SeededNoise noise(43);
  const DoubtSources sources = usual_sources();
  int covered = 0;
  for (int i = 0; i < scans; ++i) {
    const Draw draw = reading_of(sources, noise, 0.45, 1.5);
    const double u95 = u95_of_range(sources, draw.low, draw.high);
    covered += std::abs(draw.high - draw.low - 1.05) <= u95 ? 1 : 0;
  }
  EXPECT_GE(static_cast<double>(covered) / scans, 0.944);
}

}  // namespace
}  // namespace fogline
