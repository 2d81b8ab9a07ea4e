#include "simulator/scene.h"

#include "simulator/roll_sampling.h"
#include "simulator/scenario_sampling.h"

#include <algorithm>
#include <cmath>

#include <gtest/gtest.h>

namespace filmsim {
namespace {

double extreme_range(Plane plane) {
  std::sort(plane.values.begin(), plane.values.end());
  const std::size_t beyond = plane.values.size() / 1000;
  return plane.values[plane.values.size() - 1 - beyond] - plane.values[beyond];
}

double mean_luminance(const Plane& plane) {
  double sum = 0.0;
  for (const float value : plane.values) sum += std::pow(10.0, value);
  return sum / static_cast<double>(plane.values.size());
}

class EachScene : public testing::TestWithParam<int> {
 protected:
  [[nodiscard]] static SceneSettings settings() {
    SceneSettings scene;
    scene.kind = static_cast<SceneKind>(GetParam());
    scene.seed = 5;
    scene.flare = 0.0;
    scene.falloff = 0.0;
    return scene;
  }
};

TEST_P(EachScene, SpansItsRangeAboutItsMean) {
  SceneSettings scene = settings();
  for (const double range : {1.6, 2.2, 2.8}) {
    scene.log_range = range;
    const Plane plane = scene_log_luminance(scene, 360, 240);
    EXPECT_NEAR(extreme_range(plane), range, 0.08 * range);
    EXPECT_NEAR(mean_luminance(plane), 1.0, 0.001);
  }
}

TEST_P(EachScene, FlareOnlyLiftsTheShadows) {
  SceneSettings scene = settings();
  const Plane dry = scene_log_luminance(scene, 180, 120);
  scene.flare = 0.05;
  const Plane flared = scene_log_luminance(scene, 180, 120);
  EXPECT_LT(extreme_range(flared), extreme_range(dry));
  const auto lowest = [](const Plane& p) {
    return *std::min_element(p.values.begin(), p.values.end());
  };
  // Darkest spot: (L + f) / (1 + f) by the definition of the flare.
  const double expected = std::log10((std::pow(10.0, lowest(dry)) + 0.05) / 1.05);
  EXPECT_NEAR(lowest(flared), expected, 0.001);
}

TEST_P(EachScene, IsTheSameForTheSameSeedOnly) {
  SceneSettings scene = settings();
  const Plane one = scene_log_luminance(scene, 90, 60);
  EXPECT_EQ(one.values, scene_log_luminance(scene, 90, 60).values);
  scene.seed = 6;
  EXPECT_NE(one.values, scene_log_luminance(scene, 90, 60).values);
}

INSTANTIATE_TEST_SUITE_P(AllKinds, EachScene, testing::Range(0, kSceneKinds), [](const auto& test) {
  return scene_kind_name(static_cast<SceneKind>(test.param));
});

// Jones & Condit (1941): mean 2.2, standard deviation 0.28 (values as commonly cited, written
// from memory). 4000 rolls of one frame each: standard error of the mean 0.0044, of the sd 0.0031.
TEST(Population, LogRangesAreThoseOfJonesAndCondit) {
  constexpr int kRolls = 4000;
  double sum = 0.0;
  double square = 0.0;
  for (std::uint64_t seed = 0; seed < kRolls; ++seed) {
    Random random(seed, 77);
    Roll roll;
    roll.log_range_mean = random.normal(kLogRangeMean, kLogRangeRollSd);
    const double range = sample_frame(roll, random).scene.log_range;
    sum += range;
    square += range * range;
  }
  const double mean = sum / kRolls;
  EXPECT_NEAR(mean, 2.2, 0.014);
  EXPECT_NEAR(std::sqrt(square / kRolls - mean * mean), 0.28, 0.010);
}

TEST(Population, FramesOfOneRollShareTheWeather) {
  constexpr int kRolls = 2000;
  double between = 0.0;
  double within = 0.0;
  for (std::uint64_t seed = 0; seed < kRolls; ++seed) {
    Random random(seed, 78);
    const Roll roll = sample_roll(FilmFormat::k135, random);
    const double a = sample_frame(roll, random).scene.log_range - 2.2;
    const double b = sample_frame(roll, random).scene.log_range - 2.2;
    between += a * b / kRolls;
    within += 0.5 * (a * a + b * b) / kRolls;
  }
  EXPECT_NEAR(between / within, 0.0484 / 0.0784, 0.06);  // 0.22^2 / 0.28^2
}

}  // namespace
}  // namespace filmsim
