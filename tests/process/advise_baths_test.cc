#include "advice_case.h"

#include <vector>

#include <gmock/gmock.h>
#include <gtest/gtest.h>

namespace fogline {
namespace {

using testing::Contains;
using testing::ElementsAre;

// Twice the clearing time: NAVEDTRA 14209, Photography (Basic). Three times for tabular-grain film:
// common practice, no source.
TEST(AdviseFix, FollowsTheClearingTime) {
  AdviceCase roll;
  roll.tint(TintKind::none);
  roll.card.fix = {FixKind::rapid, {}, 90.0, {}, 60.0, {}};
  EXPECT_EQ(*roll.advise().fix.time_s, 120.0);
  EXPECT_EQ(roll.advise().fix.change, BathChange::longer);
  roll.card.film_type = FilmType::tabular;
  EXPECT_EQ(*roll.advise().fix.time_s, 180.0);
  roll.card.fix.time_s = 240.0;
  EXPECT_EQ(*roll.advise().fix.time_s, 240.0);
  EXPECT_EQ(roll.advise().fix.change, BathChange::keep);
}

// Exhausted when clearing takes twice as long as fresh: NAVEDTRA 14209.
TEST(AdviseFix, DoubledClearingTimeIsSpent) {
  AdviceCase roll;
  roll.tint(TintKind::none);
  roll.card.fix = {FixKind::rapid, {}, 300.0, {}, 125.0, 60.0};
  EXPECT_EQ(roll.advise().fix.change, BathChange::renew);
  EXPECT_NEAR(
      number_of(roll.advise().fix.reasons, BathReason::clears_slowly, "clearing_over_fresh"),
      125.0 / 60.0, 1e-9);
  roll.card.fix.clearing_time_s = 120.0;
  EXPECT_EQ(roll.advise().fix.change, BathChange::renew);
  roll.card.fix.clearing_time_s = 110.0;
  EXPECT_EQ(roll.advise().fix.change, BathChange::keep);
}

// 20 rolls of 80 square inches a litre: Anchell, The Darkroom Cookbook, p. 108. Tabular-grain film
// counts 1.7 times: common practice, no source.
TEST(AdviseFix, CapacityIsCounted) {
  AdviceCase roll;
  roll.tint(TintKind::none);
  roll.card.fix.kind = FixKind::rapid;
  roll.card.fix.rolls_before = 18;
  EXPECT_NE(roll.advise().fix.change, BathChange::renew);
  roll.card.fix.rolls_before = 19;
  EXPECT_EQ(roll.advise().fix.change, BathChange::renew);
  EXPECT_EQ(number_of(roll.advise().fix.reasons, BathReason::takes_too_much_silver, "units"), 21.0);
  roll.card.film_type = FilmType::tabular;
  roll.card.fix.rolls_before = 9;
  EXPECT_NE(roll.advise().fix.change, BathChange::renew);
  roll.card.fix.rolls_before = 10;
  EXPECT_EQ(roll.advise().fix.change, BathChange::renew);
}

TEST(AdviseFix, FollowsItsKind) {
  AdviceCase roll;
  roll.tint(TintKind::none);
  roll.card.fix.kind = FixKind::rapid;
  EXPECT_EQ(*roll.advise().fix.time_s, 180.0);
  roll.card.fix.kind = FixKind::plain;
  EXPECT_EQ(*roll.advise().fix.time_s, 300.0);
  roll.card.film_type = FilmType::tabular;
  EXPECT_EQ(*roll.advise().fix.time_s, 600.0);
  roll.card.fix.kind = FixKind::rapid;
  EXPECT_EQ(*roll.advise().fix.time_s, 360.0);
  roll.card.film_type.reset();
  EXPECT_EQ(*roll.advise().fix.time_s, 360.0);
  roll.card.fix.kind.reset();
  EXPECT_FALSE(roll.advise().fix.time_s);
  EXPECT_THAT(kinds(roll.advise().fix.reasons), Contains(BathReason::fixer_kind_untold));
  EXPECT_EQ(roll.advise().fix.change, BathChange::unknown);
}

TEST(AdviseFix, DyeAndHazeRenew) {
  AdviceCase roll;
  roll.card.fix = {FixKind::rapid, {}, 180.0, 2, {}, {}};
  roll.tint(TintKind::fixer_haze);
  EXPECT_EQ(roll.advise().fix.change, BathChange::renew);
  EXPECT_EQ(*roll.advise().fix.time_s, 360.0);
  AdviceCase dye;
  dye.card.fix = roll.card.fix;
  dye.find(Cause::dye_left);
  EXPECT_EQ(dye.advise().fix.change, BathChange::renew);
  // A clearing test that shows the fixer fresh leaves time alone to blame.
  dye.card.fix.clearing_time_s = 50.0;
  dye.card.fix.fresh_clearing_time_s = 45.0;
  dye.card.fix.time_s = 120.0;
  EXPECT_EQ(dye.advise().fix.change, BathChange::longer);
  EXPECT_EQ(*dye.advise().fix.time_s, 150.0);
}

TEST(AdviseFix, SlowClearingRenewsRatherThanFixesForEver) {
  AdviceCase roll;
  roll.tint(TintKind::none);
  roll.card.fix = {FixKind::rapid, {}, 300.0, {}, 400.0, {}};
  EXPECT_EQ(roll.advise().fix.change, BathChange::renew);
  EXPECT_LE(*roll.advise().fix.time_s, 600.0);
  EXPECT_THAT(kinds(roll.advise().fix.reasons), Contains(BathReason::fixes_too_long));
  roll.card.fix = {FixKind::rapid, {}, 1200.0, {}, 60.0, {}};
  EXPECT_EQ(roll.advise().fix.change, BathChange::shorter);
}

TEST(AdviseStop, ThirtySecondsButLongerForDye) {
  AdviceCase roll;
  roll.tint(TintKind::none);
  EXPECT_EQ(*roll.advise().stop.time_s, 30.0);
  EXPECT_EQ(roll.advise().stop.change, BathChange::unknown);
  roll.card.stop.time_s = 15.0;
  EXPECT_EQ(roll.advise().stop.change, BathChange::longer);
  roll.card.film_type = FilmType::tabular;
  EXPECT_EQ(*roll.advise().stop.time_s, 30.0);
  roll.find(Cause::dye_left);
  EXPECT_EQ(*roll.advise().stop.time_s, 180.0);
  EXPECT_THAT(kinds(roll.advise().stop.reasons),
              ElementsAre(BathReason::stop_longest, BathReason::stop_gas));
  roll.card.stop.time_s = 600.0;
  EXPECT_EQ(roll.advise().stop.change, BathChange::shorter);
}

TEST(AdviseWash, FillsGrowAndDyeAddsOne) {
  AdviceCase roll;
  EXPECT_THAT(roll.advise().wash.fills, ElementsAre(5, 10, 20));
  EXPECT_EQ(roll.advise().wash.change, BathChange::unknown);
  roll.card.wash.fills = {5, 10};
  EXPECT_EQ(roll.advise().wash.change, BathChange::longer);
  roll.card.wash.fills = {10, 10, 20};
  EXPECT_EQ(roll.advise().wash.change, BathChange::keep);
  EXPECT_THAT(roll.advise().wash.fills, ElementsAre(10, 10, 20));
  roll.tint(TintKind::dye_left);
  EXPECT_THAT(roll.advise().wash.fills, ElementsAre(5, 10, 20, 20));
  EXPECT_EQ(roll.advise().wash.change, BathChange::longer);
}

TEST(AdviseWash, HardenedFilmTakesRunningWater) {
  AdviceCase roll;
  roll.card.fix.kind = FixKind::hardening;
  const BathAdvice wash = roll.advise().wash;
  EXPECT_TRUE(wash.fills.empty());
  EXPECT_EQ(*wash.time_s, 1800.0);
  roll.card.fix.kind = FixKind::rapid;
  roll.card.wash.time_s = 600.0;
  EXPECT_EQ(roll.advise().wash.change, BathChange::longer);
}

TEST(AdviseBaths, UnseenThingsAreSaid) {
  const Advice advice = AdviceCase().advise();
  for (const BathAdvice& bath : {advice.fix, advice.wash}) {
    EXPECT_THAT(kinds(bath.reasons), Contains(BathReason::unseen_by_scan));
  }
}

TEST(AdviseBaths, ChromogenicKeepsToItsOwnProcess) {
  AdviceCase roll;
  roll.card.film_type = FilmType::chromogenic;
  roll.tint(TintKind::dye_left);
  const Advice advice = roll.advise();
  for (const BathAdvice& bath : {advice.stop, advice.fix, advice.wash}) {
    EXPECT_FALSE(bath.time_s);
    EXPECT_EQ(bath.change, BathChange::unknown);
    EXPECT_THAT(kinds(bath.reasons), ElementsAre(BathReason::own_process));
  }
  EXPECT_THAT(kinds(advice.this_roll), ElementsAre(RescueStep::nothing_chromogenic));
}

}  // namespace
}  // namespace fogline
