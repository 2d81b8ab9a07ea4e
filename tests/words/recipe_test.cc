#include "words/recipe.h"

#include "record/invented_judgement.h"
#include "words/judgement_words.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

namespace fogline {
namespace {

using testing::HasSubstr;
using testing::Not;

TEST(Recipe, CountsStopsInThirds) {
  Advice advice;
  for (const auto& [stops, words] : {std::pair{1.0 / 3.0, "1/3 stop more light"},
                                     {-2.0 / 3.0, "2/3 stop less light"},
                                     {1.0, "1 stop more light"},
                                     {-4.0 / 3.0, "1 1/3 stops less light"},
                                     {2.0, "2 stops more light"},
                                     {0.0, "as before"}}) {
    advice.exposure.change_stops = stops;
    EXPECT_EQ(recipe_lines(advice)[1].setting, words);
  }
}

TEST(Recipe, SaysWhereTheRollDoesNotTell) {
  const auto lines = recipe_lines(Advice{});
  EXPECT_EQ(lines[0].setting, "as before");
  EXPECT_EQ(lines[0].note, "this roll doesn't tell");
  EXPECT_EQ(lines[1].note, "this roll doesn't tell");
  EXPECT_EQ(lines[3].setting, "can't be told");
}

// What to do with a bath and for how long are two things.
TEST(Recipe, KnowsWhatToDoWithoutATime) {
  Advice advice;
  advice.fix.change = BathChange::renew;
  const auto lines = recipe_lines(advice);
  EXPECT_EQ(lines[3].setting, "make it up fresh");
  EXPECT_EQ(lines[3].note, "for how long can't be told");
}

TEST(Recipe, KeepsCautionsOutOfStepsAndReasons) {
  const RollRecord record = invented::short_record();
  const auto steps = tonight_steps(*record.judgement.advice);
  ASSERT_EQ(steps.size(), 3U);
  EXPECT_EQ(steps[0].what, "3 minutes in fresh fixer at about 20 °C, then the full wash.");
  for (const TonightStep& step : steps) {
    EXPECT_THAT(step.full, Not(HasSubstr("gloves")));
  }
  for (const RecipeReasons& part : recipe_reasons(record.judgement)) {
    for (const std::string& sentence : part.sentences) {
      EXPECT_THAT(sentence, Not(HasSubstr("gloves")));
    }
  }
}

TEST(Recipe, TellsWhatPartsShareOnce) {
  Judgement judgement;
  judgement.advice = Advice{};
  judgement.advice->fix.reasons = {fact_of(BathReason::unseen_by_scan)};
  judgement.advice->wash.reasons = judgement.advice->fix.reasons;
  const auto parts = recipe_reasons(judgement);
  ASSERT_EQ(parts.size(), 1U);
  EXPECT_EQ(parts[0].name, "Fixer");
}

TEST(JudgementWords, SayChancesInWholePercent) {
  EXPECT_EQ(chance_text(0.704), "70 %");
  EXPECT_EQ(chance_text(0.9999), "over 99 %");
  EXPECT_EQ(chance_text(0.001), "under 1 %");
}

TEST(JudgementWords, LeadWithLightWhereLightIsTheCause) {
  RollRecord record = invented::short_record();
  record.judgement.light_or_time = invented::weighed(
      {0.05, 0.85, 0.0, 0.1, 0.0}, invented::density(-1.6, 0.6), invented::density(0.55, 0.06));
  EXPECT_EQ(judgement_sentence(record),
            "Light was short by about 1.6 ± 0.6 stops. Development was right: contrast about "
            "0.55 ± 0.06, aimed at 0.58.");
}

TEST(JudgementWords, DoubtASecondFault) {
  RollRecord record = invented::short_record();
  record.judgement.light_or_time = invented::weighed(
      {0.0, 0.0, 0.1, 0.0, 0.9}, invented::density(1.1, 1.2), invented::density(0.81, 0.09));
  EXPECT_EQ(judgement_sentence(record),
            "Development was long: contrast about 0.81 ± 0.09, aimed at 0.58. Light may have been "
            "plentiful by about 1.1 ± 1.2 stops.");
}

TEST(JudgementWords, TellFilmThatWasNeverExposed) {
  RollRecord record = invented::record(invented::roll());
  record.judgement.findings = {
      invented::finding(Cause::not_exposed, 0.8, fact_of(CauseStatement::not_exposed), {})};
  EXPECT_EQ(judgement_sentence(record),
            "The film was developed, but no picture was exposed on it.");
}

}  // namespace
}  // namespace fogline
