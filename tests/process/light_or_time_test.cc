#include "process/belief/weigh_light_and_time.h"
#include "process/invented_reading.h"
#include "tables/shipped_knowledge.h"

#include <fogline/process/light_and_development.h>

#include <algorithm>

#include <gtest/gtest.h>

// The table of signs is the trade's own: "common practice, no source". It says how shadows (S),
// highlights (H) and edge print (E) stand for each case; a normal roll has S 0.20 to 0.40,
// H 1.05 to 1.35 and E as on the other rolls of that film.

namespace fogline {
namespace {

using invented::RollNumbers;

constexpr double usual_print = 1.0;

LightOrTime weigh(const RollNumbers& numbers, const RollPopulation& population) {
  return weigh_light_and_time(invented::roll_of(numbers), invented::usual_aim(), population,
                              nullptr);
}

/// With edge print, and a logbook that knows how dense it should be.
LightOrTime weigh_logged(double shadow, double highlight, double edge_print) {
  RollNumbers numbers;
  numbers.shadow = shadow;
  numbers.highlight = highlight;
  numbers.edge_print = edge_print;
  return weigh(numbers, invented::with_logged_print(usual_print));
}

double sum(const CauseProbabilities& causes) {
  return causes.normal + causes.under_exposed + causes.over_exposed + causes.under_developed +
         causes.over_developed;
}

double greatest_but_normal(const CauseProbabilities& causes) {
  return std::max(
      {causes.under_exposed, causes.over_exposed, causes.under_developed, causes.over_developed});
}

TEST(LightOrTime, NormalRollIsNormal) {
  const LightOrTime weighed = weigh_logged(0.30, 1.20, usual_print);
  ASSERT_TRUE(weighed.judged());
  EXPECT_NEAR(sum(*weighed.causes), 1.0, 1e-9);
  EXPECT_GT(weighed.causes->normal, greatest_but_normal(*weighed.causes));
  EXPECT_NEAR(weighed.exposure_stops->value, 0.0, 0.35);
  EXPECT_NEAR(weighed.contrast_index->value, 0.58, 0.04);
}

TEST(LightOrTime, OneStopUnder) {
  const LightOrTime weighed = weigh_logged(0.08, 1.03, usual_print);
  EXPECT_GT(weighed.causes->under_exposed, 0.5);
  EXPECT_LT(weighed.exposure_stops->value, -0.6);
}

TEST(LightOrTime, TwoStopsUnder) {
  const LightOrTime weighed = weigh_logged(0.01, 0.85, usual_print);
  EXPECT_GT(weighed.causes->under_exposed, 0.8);
  EXPECT_LT(weighed.exposure_stops->value, -1.2);
}

TEST(LightOrTime, OneStopOver) {
  const LightOrTime weighed = weigh_logged(0.465, 1.35, usual_print);
  EXPECT_GT(weighed.causes->over_exposed, greatest_but_normal(*weighed.causes) - 1e-12);
  EXPECT_GT(weighed.exposure_stops->value, 0.5);
}

TEST(LightOrTime, TwentyPercentShortOfTime) {
  const LightOrTime weighed = weigh_logged(0.27, 1.04, 0.88 * usual_print);
  EXPECT_GT(weighed.causes->under_developed, greatest_but_normal(*weighed.causes) - 1e-12);
  EXPECT_GT(weighed.causes->under_developed, 3.0 * weighed.causes->over_developed);
  EXPECT_NEAR(weighed.contrast_index->value, 0.88 * 0.58, 0.04);
}

TEST(LightOrTime, TwentyPercentTooLong) {
  const LightOrTime weighed = weigh_logged(0.32, 1.33, 1.10 * usual_print);
  EXPECT_GT(weighed.causes->over_developed, greatest_but_normal(*weighed.causes) - 1e-12);
  EXPECT_NEAR(weighed.contrast_index->value, 1.10 * 0.58, 0.04);
}

TEST(LightOrTime, PushedShowsBothCauses) {
  const LightOrTime weighed = weigh_logged(0.01, 1.20, 1.30 * usual_print);
  EXPECT_GT(weighed.causes->under_exposed + weighed.causes->over_developed, 0.9);
  EXPECT_LT(weighed.exposure_stops->value, -0.667);
  EXPECT_GT(weighed.contrast_index->value, 0.58 + 0.05);
}

TEST(LightOrTime, PulledShowsBothCauses) {
  const LightOrTime weighed = weigh_logged(0.50, 1.20, 0.82 * usual_print);
  EXPECT_GT(weighed.causes->over_exposed + weighed.causes->under_developed, 0.8);
  EXPECT_GT(weighed.exposure_stops->value, 0.3);
  EXPECT_LT(weighed.contrast_index->value, 0.58 - 0.03);
}

TEST(LightOrTime, PlannedPushIsNormal) {
  RollNumbers numbers;
  numbers.shadow = 0.36;
  numbers.highlight = 1.48;
  const Aim pushed{0.72, 0.05, AimSource::card, {}};
  const LightOrTime weighed = weigh_light_and_time(invented::roll_of(numbers), pushed,
                                                   shipped_knowledge().population, nullptr);
  const LightOrTime unplanned = weigh(numbers, shipped_knowledge().population);
  EXPECT_GT(weighed.causes->normal, weighed.causes->over_developed);
  EXPECT_LT(unplanned.causes->normal, unplanned.causes->over_developed);
  EXPECT_GT(weighed.causes->normal, unplanned.causes->normal);
  EXPECT_LT(weighed.causes->over_developed, unplanned.causes->over_developed);
}

TEST(LightOrTime, UnloggedPrintNeverDecidesAlone) {
  RollNumbers numbers;
  const LightOrTime without = weigh(numbers, shipped_knowledge().population);
  numbers.edge_print = 0.8;
  const LightOrTime with = weigh(numbers, shipped_knowledge().population);
  EXPECT_LT(with.causes->under_developed, 0.5);
  EXPECT_NEAR(with.contrast_index->value, without.contrast_index->value, 0.04);
}

TEST(LightOrTime, BluntPrintSaysNothing) {
  RollNumbers numbers;
  const LightOrTime without = weigh(numbers, shipped_knowledge().population);
  numbers.edge_print = 1.8;
  const LightOrTime with = weigh(numbers, shipped_knowledge().population);
  EXPECT_NEAR(with.contrast_index->value, without.contrast_index->value, 1e-9);
}

TEST(LightOrTime, MoreFramesTellMore) {
  RollNumbers numbers;
  numbers.frames = 1;
  const LightOrTime one = weigh(numbers, shipped_knowledge().population);
  numbers.frames = 36;
  const LightOrTime all = weigh(numbers, shipped_knowledge().population);
  EXPECT_LT(all.exposure_stops->u95, one.exposure_stops->u95);
  EXPECT_LT(all.contrast_index->u95, one.contrast_index->u95);
  // Weather and habit are the roll's own: 0.45 stop of it stays, whatever the number of frames.
  EXPECT_GT(all.exposure_stops->u95, 1.96 * 0.40);
}

TEST(LightOrTime, UnknownScannerDoubtsContrastMore) {
  RollMeasurement roll = invented::roll_of({});
  const LightOrTime calibrated =
      weigh_light_and_time(roll, invented::usual_aim(), shipped_knowledge().population, nullptr);
  roll.scans[0].fitness = Fitness::indicative;
  roll.scans[0].info.transfer.source = TransferSource::assumed;
  const LightOrTime unknown =
      weigh_light_and_time(roll, invented::usual_aim(), shipped_knowledge().population, nullptr);
  EXPECT_GT(unknown.contrast_index->u95, calibrated.contrast_index->u95);
}

TEST(LightOrTime, LowerBoundIsNoValue) {
  RollMeasurement roll = invented::roll_of({});
  for (FrameMeasurement& frame : roll.scans[0].frames) {
    frame.tone.highlight->at_least = true;
  }
  const LightOrTime bound =
      weigh_light_and_time(roll, invented::usual_aim(), shipped_knowledge().population, nullptr);
  const LightOrTime value = weigh({}, shipped_knowledge().population);
  EXPECT_GT(bound.contrast_index->value, value.contrast_index->value);
  EXPECT_GT(bound.contrast_index->u95, value.contrast_index->u95);
}

TEST(LightOrTime, EvidenceQuotesWhatWasRead) {
  const LightOrTime weighed = weigh_logged(0.12, 1.10, 0.95);
  ASSERT_GE(weighed.evidence.size(), 4U);
  EXPECT_EQ(weighed.evidence[0].kind, Evidence::shadow);
  EXPECT_NEAR(weighed.evidence[0].numbers[0], 0.12, 1e-9);
  EXPECT_EQ(weighed.evidence[0].numbers[1], 6.0);
  EXPECT_EQ(weighed.evidence[1].kind, Evidence::highlight);
  EXPECT_NEAR(weighed.evidence[1].numbers[0], 1.10, 1e-9);
  EXPECT_EQ(weighed.evidence[2].kind, Evidence::edge_print);
  EXPECT_NEAR(weighed.evidence[2].numbers[0], 0.95, 1e-9);
  EXPECT_NEAR(weighed.evidence[2].numbers[1], 0.08, 1e-9);
}

TEST(LightOrTime, AsksForMoreWhereOpenOnly) {
  const LightOrTime open = weigh({}, shipped_knowledge().population);
  EXPECT_TRUE(open.would_tell_most);
  const LightOrTime settled = weigh_logged(0.0, 0.30, usual_print);
  EXPECT_GT(settled.causes->under_exposed, 0.95);
  EXPECT_FALSE(settled.would_tell_most);
}

TEST(LightOrTime, NothingIsJudgedWithoutPictures) {
  RollNumbers numbers;
  numbers.frames = 0;
  const LightOrTime weighed = weigh(numbers, shipped_knowledge().population);
  EXPECT_FALSE(weighed.judged());
  for (const WhyUnknown& why :
       {weighed.causes.why(), weighed.exposure_stops.why(), weighed.contrast_index.why()}) {
    EXPECT_EQ(why, fact_of(Unknown::no_picture));
  }
  EXPECT_FALSE(weighed.exposure_stops.has_value());
}

TEST(LightOrTime, WhatFitsNoRollIsNotJudged) {
  // Clear skies and dense shadows: no negative, whatever its fault, has them the wrong way round.
  RollNumbers numbers;
  numbers.shadow = 1.50;
  numbers.highlight = 0.30;
  const LightOrTime weighed = weigh(numbers, shipped_knowledge().population);
  EXPECT_FALSE(weighed.judged());
  EXPECT_EQ(weighed.contrast_index.why(), fact_of(Unknown::unusual_roll));
}

TEST(LightOrTime, RepeatedFramesCountOnce) {
  RollMeasurement roll = invented::roll_of({});
  FrameMeasurement again = roll.scans[0].frames[0];
  again.repeats_frame = 1;
  again.tone.shadow->value = 2.0;
  for (int i = 0; i < 12; ++i) {
    roll.scans[0].frames.push_back(again);
  }
  const LightOrTime weighed =
      weigh_light_and_time(roll, invented::usual_aim(), shipped_knowledge().population, nullptr);
  EXPECT_NEAR(weighed.exposure_stops->value,
              weigh({}, shipped_knowledge().population).exposure_stops->value, 1e-9);
}

}  // namespace
}  // namespace fogline
