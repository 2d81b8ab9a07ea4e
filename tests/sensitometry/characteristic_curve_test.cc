#include "base/seeded_noise.h"
#include "reference_curves.h"

#include <fogline/sensitometry/characteristic_curve.h>
#include <fogline/sensitometry/sensitometry.h>

#include <cmath>

#include <gtest/gtest.h>

namespace fogline {
namespace {

constexpr double base = 0.28;

/// Steps of a film with a soft toe and a shoulder that no fitted family has.
double film(double log_h) {
  const double line = SoftToe{0.13, 4.8, -2.0}(log_h);
  return line / std::pow(1.0 + std::pow(line / 2.4, 3.0), 1.0 / 3.0);
}

ExposedSteps steps_of(int count, double noise, std::uint32_t seed = 3) {
  SeededNoise random(seed);
  ExposedSteps exposed;
  for (int i = 0; i < count; ++i) {
    const double log_h = -2.6 + 3.0 * i / (count - 1);
    exposed.steps.push_back({"step " + std::to_string(i + 1), log_h, 0.0,
                             base + film(log_h) + random.normal(noise), std::max(noise, 0.001),
                             std::nullopt});
  }
  exposed.base_fog = base;
  exposed.base_fog_doubt = 0.002;
  return exposed;
}

double worst_between(const FittedCurve& curve, double begin, double end) {
  double worst = 0.0;
  for (double log_h = begin; log_h <= end; log_h += 0.05) {
    worst = std::max(worst, std::abs(curve.mean.density_at(log_h) - film(log_h)));
  }
  return worst;
}

class NumberOfSteps : public testing::TestWithParam<int> {};

TEST_P(NumberOfSteps, LeavesACurveNearTheFilms) {
  const auto outcome = fit_characteristic_curve(steps_of(GetParam(), 0.0));
  ASSERT_TRUE(outcome);
  EXPECT_LT(worst_between(*outcome, -2.6, 0.4), GetParam() < 7 ? 0.03 : 0.01);
  EXPECT_NEAR(outcome->base_fog, base, 0.004);
}

INSTANTIATE_TEST_SUITE_P(Counts, NumberOfSteps, testing::Values(5, 7, 11, 21, 41));

TEST(CharacteristicCurve, NeverFalls) {
  const auto outcome = fit_characteristic_curve(steps_of(21, 0.02));
  ASSERT_TRUE(outcome);
  const auto rises = [](const CurveTable& table) {
    return std::is_sorted(table.net_density.begin(), table.net_density.end());
  };
  EXPECT_TRUE(rises(outcome->mean));
  for (const CurveTable& draw : outcome->draws) {
    ASSERT_TRUE(rises(draw));
    ASSERT_GE(draw.net_density.front(), 0.0);
  }
}

TEST(CharacteristicCurve, IsTheSameForTheSameSteps) {
  const auto once = fit_characteristic_curve(steps_of(11, 0.01));
  const auto again = fit_characteristic_curve(steps_of(11, 0.01));
  EXPECT_EQ(once->mean.net_density, again->mean.net_density);
  EXPECT_EQ(once->doubt, again->doubt);
}

TEST(CharacteristicCurve, IsntBentByOneWildStep) {
  ExposedSteps exposed = steps_of(21, 0.004);
  exposed.steps[12].density += 0.15;
  const auto outcome = fit_characteristic_curve(exposed);
  ASSERT_TRUE(outcome);
  EXPECT_LT(worst_between(*outcome, -2.6, 0.4), 0.015);
  int left_out = 0;
  for (const ExposedStep& step : outcome->steps) {
    left_out += step.left_out ? 1 : 0;
    EXPECT_TRUE(!step.left_out || step.label == "step 13") << step.label;
  }
  EXPECT_EQ(left_out, 1);
}

TEST(CharacteristicCurve, LeavesNoStepOutWithoutReason) {
  for (std::uint32_t seed = 1; seed <= 5; ++seed) {
    const auto outcome = fit_characteristic_curve(steps_of(21, 0.006, seed));
    for (const ExposedStep& step : outcome->steps) {
      EXPECT_FALSE(step.left_out) << step.label << " of seed " << seed;
    }
  }
}

TEST(CharacteristicCurve, DoubtsMoreBeyondTheExposures) {
  const FittedCurve curve = *fit_characteristic_curve(steps_of(11, 0.005));
  const auto doubt_at = [&](double log_h) {
    return curve
        .doubt[static_cast<std::size_t>((log_h - curve.mean.begin_log_h) / curve.mean.step_log_h)];
  };
  EXPECT_LT(doubt_at(-1.0), 0.01);
  EXPECT_GT(doubt_at(1.0), 3.0 * doubt_at(-1.0));
}

TEST(CharacteristicCurve, DoubtGrowsWithTheDoubtOfTheExposures) {
  ExposedSteps exact = steps_of(11, 0.004);
  ExposedSteps doubtful = exact;
  for (ExposedStep& step : doubtful.steps) {
    step.log_h_doubt = 0.06;
  }
  const auto sure = read_curve(*fit_characteristic_curve(exact)).contrast_index;
  const auto unsure = read_curve(*fit_characteristic_curve(doubtful)).contrast_index;
  ASSERT_TRUE(sure && unsure);
  EXPECT_GT(unsure->u95, 2.0 * sure->u95);
}

TEST(CharacteristicCurve, ADoubtOfAllDensitiesIsOneOfContrast) {
  ExposedSteps exposed = steps_of(21, 0.003);
  exposed.density_share_doubt = 0.05;
  const auto index = read_curve(*fit_characteristic_curve(exposed)).contrast_index;
  ASSERT_TRUE(index);
  EXPECT_NEAR(index->u95, 1.96 * 0.05 * index->value, 0.02);
  exposed.density_share_doubt = 0.0;
  exposed.common_doubts = {{{0.0, 2.0}, {0.0, 0.1}}};
  const auto common = read_curve(*fit_characteristic_curve(exposed)).contrast_index;
  EXPECT_NEAR(common->u95, index->u95, 0.015);
}

TEST(CharacteristicCurve, NeedsFiveSteps) {
  ExposedSteps exposed = steps_of(6, 0.003);
  exposed.steps[0].left_out = fact_of(Unknown::step_clipped);
  exposed.steps[1].left_out = fact_of(Unknown::step_clipped);
  const auto outcome = fit_characteristic_curve(exposed);
  EXPECT_EQ(outcome.why(), fact_of(Unknown::few_exposed_steps, {4.0, 5.0}));
}

TEST(CharacteristicCurve, FindsBaseByItselfWhereNobodyReadIt) {
  ExposedSteps exposed = steps_of(21, 0.003);
  exposed.base_fog.reset();
  const FittedCurve curve = *fit_characteristic_curve(exposed);
  EXPECT_NEAR(curve.base_fog, base, 3.0 * curve.base_fog_doubt);
  EXPECT_GT(curve.base_fog_doubt, 0.002);
}

/// A parabola that touches base and a straight line of slope 0.62.
double straight_film(double log_h) {
  constexpr double toe = 0.25;
  const double from_inertia = log_h + 2.0;
  if (from_inertia < -toe) {
    return 0.0;
  }
  return from_inertia > toe ? 0.62 * from_inertia
                            : 0.62 * (from_inertia + toe) * (from_inertia + toe) / (4.0 * toe);
}

// Of curves that stray the greatest slope is too great; of many tests with bad shutters little of
// it may be left on average.
TEST(ReadCurve, ReadsNoSlopeTooGreatFromExposuresThatErr) {
  constexpr int tests = 25;
  constexpr double shutter = 0.06;  // a fifth of a stop
  SeededNoise random(11);
  double off = 0.0;
  for (int test = 0; test < tests; ++test) {
    ExposedSteps exposed = steps_of(11, 0.003);
    for (ExposedStep& step : exposed.steps) {
      step.density =
          base + straight_film(step.log_h + random.normal(shutter)) + random.normal(0.003);
      step.log_h_doubt = shutter;
    }
    const auto outcome = fit_characteristic_curve(exposed);
    ASSERT_TRUE(outcome);
    const CurveReading gamma = read_curve(*outcome).gamma;
    ASSERT_TRUE(gamma);
    off += (gamma->value - 0.62) / tests;
  }
  EXPECT_NEAR(off, 0.0, 0.02);  // the mean over the drawn curves is off by 0.035
}

TEST(ReadCurve, SaysWhyWhatItDoesntReachIsAbsent) {
  ExposedSteps exposed = steps_of(21, 0.003);
  exposed.steps.resize(10);  // up to log H -1.25
  const CurveReadings readings = read_curve(*fit_characteristic_curve(exposed));
  EXPECT_TRUE(readings.speed_point_log_h);
  EXPECT_FALSE(readings.contrast_index);
  EXPECT_FALSE(readings.gradient_150);
  const WhyUnknown& why = readings.gradient_150.why();
  ASSERT_EQ(why.kind, Unknown::needs_more_exposure);
  EXPECT_NEAR(why.numbers[0], readings.speed_point_log_h->value + 1.5, 1e-9);
  EXPECT_NEAR(why.numbers[1], exposed.steps.back().log_h, 1e-9);
}

}  // namespace
}  // namespace fogline
