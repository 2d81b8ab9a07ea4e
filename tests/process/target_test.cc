#include "process/belief/weigh_light_and_time.h"
#include "record/invented_curve.h"
#include "tables/shipped_knowledge.h"

#include <fogline/process/light_and_development.h>
#include <fogline/process/roll_card.h>

#include <gmock/gmock.h>
#include <gtest/gtest.h>

namespace fogline {
namespace {

using testing::DoubleNear;
using testing::ElementsAre;

RollCard bracket_card() {
  RollCard card;
  card.name = "invented";
  card.exposure_index = 400.0;
  card.target = TargetCard{};
  return card;
}

TEST(TargetOfCard, TakesStopsAsTheyAre) {
  RollCard card = bracket_card();
  card.target->stops = {-2.0, 0.0, 2.0};
  card.target->doubt_stops = 0.1;
  const ExposureTarget target = target_of_card(card, std::nullopt);
  ASSERT_TRUE(target.bracket);
  EXPECT_THAT(target.bracket->stops, ElementsAre(-2.0, 0.0, 2.0));
  EXPECT_THAT(target.bracket->doubt_stops, ElementsAre(0.1, 0.1, 0.1));
  EXPECT_EQ(target.exposure_index, 400.0);
}

TEST(TargetOfCard, ShutterMarksStandForTheirTrueTimes) {
  RollCard card = bracket_card();
  card.target->times_s = {1.0 / 500.0, 1.0 / 60.0, 1.0 / 15.0, 4.0};
  card.target->metered_time_s = 1.0 / 60.0;
  const ExposureTarget target = target_of_card(card, std::nullopt);
  EXPECT_THAT(target.bracket->stops, ElementsAre(DoubleNear(-3.0, 1e-9), DoubleNear(0.0, 1e-9),
                                                 DoubleNear(2.0, 1e-9), DoubleNear(8.0, 1e-9)));
  // Beyond a second reciprocity adds doubt.
  EXPECT_NEAR(target.bracket->doubt_stops[1], 0.15, 1e-9);
  EXPECT_GT(target.bracket->doubt_stops[3], 0.17);
}

TEST(TargetOfCard, ShuttersErrMoreThanFilters) {
  RollCard card = bracket_card();
  card.target->stops = {-2.0, 0.0};
  card.target->by = "filter";
  const double filter = target_of_card(card, std::nullopt).bracket->doubt_stops[0];
  card.target->by = "shutter";
  EXPECT_GT(target_of_card(card, std::nullopt).bracket->doubt_stops[0], 2.0 * filter);
}

TEST(TargetOfCard, AWedgeNeedsItsReference) {
  RollCard card = bracket_card();
  card.target->kind = TargetKind::exposed_wedge;
  EXPECT_TRUE(target_of_card(card, std::nullopt).empty());
  card.target->h_at_zero_lux_s = 0.5;
  const ExposureTarget target = target_of_card(card, nominal_wedge(21, 0.15));
  ASSERT_TRUE(target.wedge);
  EXPECT_EQ(target.wedge->h_at_zero_lux_s, 0.5);
}

TEST(WeighTarget, JudgesDevelopmentByTheCurve) {
  const Aim aim;
  const LightOrTime right = weigh_light_and_time(invented::bracket_roll(0.62), aim,
                                                 shipped_knowledge().population, nullptr);
  ASSERT_TRUE(right.judged());
  EXPECT_GT(right.causes->normal, 0.8);
  EXPECT_NEAR(right.contrast_index->value,
              invented::sensitometry(0.62).readings.contrast_index->value, 1e-9);
  const LightOrTime soft = weigh_light_and_time(invented::bracket_roll(0.45), aim,
                                                shipped_knowledge().population, nullptr);
  EXPECT_GT(soft.causes->under_developed, 0.9);
  const LightOrTime hard = weigh_light_and_time(invented::bracket_roll(0.85), aim,
                                                shipped_knowledge().population, nullptr);
  EXPECT_GT(hard.causes->over_developed, 0.9);
}

TEST(WeighTarget, JudgesLightByTheSpeedPoint) {
  const LightOrTime judged =
      weigh_light_and_time(invented::bracket_roll(), {}, shipped_knowledge().population, nullptr);
  ASSERT_TRUE(judged.exposure_stops);
  const double speed_point = invented::sensitometry().readings.speed_point_log_h->value;
  EXPECT_NEAR(judged.exposure_stops->value, (-1.0 - speed_point) / stop_log_h, 1e-9);
}

TEST(WeighTarget, LeavesLightOpenWhereNothingWasMetered) {
  RollMeasurement roll = invented::bracket_roll(0.62);
  roll.sensitometry->scale.metered_log_h.reset();
  const LightOrTime judged =
      weigh_light_and_time(roll, {}, shipped_knowledge().population, nullptr);
  EXPECT_TRUE(judged.judged());
  EXPECT_FALSE(judged.exposure_stops);
  EXPECT_EQ(judged.exposure_stops.why(), fact_of(Unknown::nothing_metered));
  EXPECT_LT(judged.causes->under_exposed + judged.causes->over_exposed, 1e-6);
}

// N+1: a subject of six zones gets the range of seven, 7/6 of the contrast; N-1: 7/8 (Adams, *The
// Negative*, 1981; from memory).
TEST(JudgeCurve, CountsZonesOfDevelopment) {
  RollMeasurement roll = invented::bracket_roll();
  auto& index = roll.sensitometry->readings.contrast_index;
  const auto zones_of = [&](double contrast) {
    index->value = contrast;
    return judge_curve(roll, {})->zones->value;
  };
  EXPECT_NEAR(zones_of(0.58), 0.0, 1e-9);
  EXPECT_NEAR(zones_of(0.58 * 7.0 / 6.0), 1.0, 1e-9);
  EXPECT_NEAR(zones_of(0.58 * 7.0 / 5.0), 2.0, 1e-9);
  EXPECT_NEAR(zones_of(0.58 * 7.0 / 8.0), -1.0, 1e-9);
  EXPECT_NEAR(zones_of(0.58 * 7.0 / 9.0), -2.0, 1e-9);
}

TEST(JudgeCurve, CallsDevelopmentNormalWithinTheTolerance) {
  RollMeasurement roll = invented::bracket_roll();
  auto& index = roll.sensitometry->readings.contrast_index;
  const auto kind_of = [&](double contrast) {
    index->value = contrast;
    return judge_curve(roll, {})->development;
  };
  EXPECT_EQ(kind_of(0.56), DevelopmentKind::normal);
  EXPECT_EQ(kind_of(0.50), DevelopmentKind::contracted);
  EXPECT_EQ(kind_of(0.70), DevelopmentKind::expanded);
}

TEST(JudgeCurve, TellsPaperForBothEnlargers) {
  const auto judged = judge_curve(invented::bracket_roll(), {});
  ASSERT_TRUE(judged && judged->diffusion_range && judged->condenser_range);
  const double ratio = judged->condenser_range->value / judged->diffusion_range->value;
  EXPECT_GT(ratio, 1.15);
  EXPECT_LT(ratio, 1.3);
  EXPECT_EQ(judged->suits_scanning, true);
}

TEST(JudgeCurve, SaysWhyWhatTheCurveDoesNotTell) {
  RollMeasurement roll = invented::bracket_roll();
  roll.sensitometry->readings.contrast_index = Unknown::curve_too_short;
  roll.sensitometry->placement.density_range = Unknown::curve_too_short;
  const auto judged = judge_curve(roll, {});
  ASSERT_TRUE(judged);
  EXPECT_EQ(judged->zones.why(), fact_of(Unknown::no_curve_contrast));
  EXPECT_EQ(judged->diffusion_range.why(), fact_of(Unknown::curve_too_short));
  EXPECT_EQ(judged->condenser_range.why(), judged->diffusion_range.why());
}

// ISO 6846: 100 times the log range, to the nearest ten (from memory).
TEST(IsoRange, IsRoundedToTens) {
  EXPECT_EQ(iso_range(1.08), 110);
  EXPECT_EQ(iso_range(0.84), 80);
  EXPECT_EQ(iso_range(1.344), 130);
}

}  // namespace
}  // namespace fogline
