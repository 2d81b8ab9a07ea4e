#include "words/recipe.h"

#include "record/invented_judgement.h"
#include "words/judgement_words.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

namespace fogline {
namespace {

using testing::HasSubstr;
using testing::Not;

TEST(Recipe, WritesTimesAsAClockDoes) {
  EXPECT_EQ(minutes_text(0.0), "0:00");
  EXPECT_EQ(minutes_text(59.6), "1:00");
  EXPECT_EQ(minutes_text(570.0), "9:30");
  EXPECT_EQ(minutes_text(3605.0), "60:05");
  EXPECT_EQ(minutes_text(-1.0), "unknown");
}

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

TEST(Recipe, ShortensStepsToWhatIsDone) {
  EXPECT_EQ(short_step("3 minutes in fresh fixer at about 20 °C, then the full wash: it helps."),
            "3 minutes in fresh fixer at about 20 °C, then the full wash.");
  EXPECT_EQ(short_step("For the dye: three fills of 1.5 litres. If colour is left, more."),
            "For the dye: three fills of 1.5 litres.");
  EXPECT_EQ(short_step("Nothing needs doing to this film."), "Nothing needs doing to this film.");
}

TEST(Recipe, KeepsCautionsOutOfTheSteps) {
  for (const std::string& step : tonight_steps(invented::advice())) {
    EXPECT_THAT(step, Not(HasSubstr("gloves")));
  }
  EXPECT_EQ(tonight_steps(invented::advice()).size(), 3U);
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
  record.judgement.findings = {{"not-exposed", 0.8, "No picture was exposed on it.", {}}};
  EXPECT_EQ(judgement_sentence(record), "No picture was exposed on it.");
}

}  // namespace
}  // namespace fogline
