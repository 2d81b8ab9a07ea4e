#include "simulator/wedge_scan.h"

#include "simulator/random.h"
#include "simulator/response_shape.h"
#include "simulator/wedge_sampling.h"

#include <cmath>

#include <gtest/gtest.h>

namespace filmsim {
namespace {

/// A wedge on an even lamp without stray light, noise or scattering.
WedgePlan plain_wedge() {
  WedgePlan wedge;
  wedge.densities = {0.1, 0.5, 0.9, 1.3, 1.7};
  wedge.callier = 1.0;
  wedge.granularity = 0.0;
  wedge.scanner.glare.share = 0.0;
  wedge.scanner.full_well = 1e9;
  wedge.scanner.read_noise = 0.0;
  return wedge;
}

double code_at(const WedgeScan& scan, const Point& at) {
  return scan.picture.code(static_cast<int>(at.x), static_cast<int>(at.y), 1);
}

TEST(WedgeScan, StepsLetThroughWhatTheirDensitySays) {
  const WedgePlan wedge = plain_wedge();
  const WedgeScan scan = render_wedge(wedge);
  ASSERT_EQ(scan.middles_px.size(), wedge.densities.size());
  const double bare = scan.bare_level * scan.picture.top();
  for (std::size_t i = 0; i < wedge.densities.size(); ++i) {
    EXPECT_NEAR(-std::log10(code_at(scan, scan.middles_px[i]) / bare), wedge.densities[i], 0.001);
  }
}

TEST(WedgeScan, DirectedLightReadsSilverDenser) {
  WedgePlan wedge = plain_wedge();
  wedge.callier = 1.3;
  const WedgeScan scan = render_wedge(wedge);
  const double bare = scan.bare_level * scan.picture.top();
  const double read = -std::log10(code_at(scan, scan.middles_px[4]) / bare);
  EXPECT_NEAR(read, 1.3 * 1.7, 0.005);
}

TEST(WedgeScan, AMaskLeavesBareLightAround) {
  WedgePlan wedge = plain_wedge();
  wedge.bare_mm = 3.0;
  const WedgeScan scan = render_wedge(wedge);
  EXPECT_LT(scan.picture.code(1, 1, 1), 0.001 * scan.picture.top());
  const Point middle = scan.middles_px[2];
  const double beside = middle.y - (0.5 * wedge.width_mm + 1.5) * wedge.pixels_per_mm;
  EXPECT_NEAR(code_at(scan, {middle.x, beside}), scan.bare_level * scan.picture.top(), 60.0);
}

TEST(WedgeScan, TurningItAroundTurnsTheSteps) {
  WedgePlan wedge = plain_wedge();
  wedge.direction_deg = 180.0;
  const WedgeScan scan = render_wedge(wedge);
  EXPECT_GT(scan.middles_px.front().x, scan.middles_px.back().x);
  EXPECT_GT(code_at(scan, scan.middles_px.front()), code_at(scan, scan.middles_px.back()));
}

TEST(ResponseShape, RisesWithTheSignalWhateverItsShape) {
  Random random(3);
  for (int i = 0; i < 200; ++i) {
    const ResponseShape shape = sample_response(random);
    for (std::size_t c = 0; c < 3; ++c) {
      double before = bent(1e-5, shape, c);
      for (double log_signal = -4.9; log_signal <= 0.0; log_signal += 0.1) {
        const double here = bent(std::pow(10.0, log_signal), shape, c);
        EXPECT_GT(here, before) << log_signal;
        before = here;
      }
      EXPECT_NEAR(bent(1.0, shape, c), 1.0, 1e-9);
    }
  }
}

TEST(ResponseShape, StraightChangesNothing) {
  EXPECT_EQ(bent(0.37, ResponseShape{}, 0), 0.37);
}

TEST(WedgeSampling, TheSamePairComesAgainAndItsStepsRise) {
  for (std::uint64_t seed = 1; seed <= 30; ++seed) {
    const CalibratedPair pair = sample_pair({true, false}, seed);
    EXPECT_EQ(pair.wedge.densities, sample_pair({true, false}, seed).wedge.densities);
    ASSERT_EQ(pair.wedge.densities.size(), pair.wedge.certified.size());
    EXPECT_GE(pair.wedge.densities.size(), 5U);
    EXPECT_LE(pair.wedge.densities.size(), 41U);
    for (std::size_t i = 1; i < pair.wedge.densities.size(); ++i) {
      EXPECT_GT(pair.wedge.densities[i], pair.wedge.densities[i - 1]);
      EXPECT_GT(pair.wedge.certified[i], pair.wedge.certified[i - 1]);
    }
  }
}

}  // namespace
}  // namespace filmsim
