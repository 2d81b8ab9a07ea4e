#include "words/rescue_words.h"

#include "one_of_each.h"
#include "words/aim_words.h"
#include "words/paper_words.h"

#include <set>
#include <string>

#include <gmock/gmock.h>
#include <gtest/gtest.h>

namespace fogline {
namespace {

using testing::HasSubstr;
using testing::Not;
using testing::StartsWith;

TEST(RescueSteps, AreEachAnother) {
  std::set<std::string> whole;
  std::set<std::string> in_short;
  for (const Fact<RescueStep>& step : one_of_each<RescueStep>()) {
    EXPECT_TRUE(whole.insert(step_sentence(step)).second) << step_sentence(step);
    EXPECT_TRUE(in_short.insert(short_step_sentence(step)).second) << short_step_sentence(step);
  }
}

TEST(RescueSteps, KeepAcidFromFixerAndSulfite) {
  EXPECT_THAT(step_sentence(fact_of(RescueStep::clear_stain)),
              AllOf(HasSubstr("rinse well"), HasSubstr("Acid never goes into fixer or sulfite"),
                    HasSubstr("sulfur dioxide")));
}

TEST(RescueSteps, WipeNoWetEmulsion) {
  for (const RescueStep step : {RescueStep::blow_off_dust, RescueStep::wipe_drying_marks}) {
    EXPECT_THAT(step_sentence(fact_of(step)), HasSubstr("Never wipe wet emulsion"));
  }
}

TEST(RescueSteps, FadeDyeOnlyAfterATestOfFixing) {
  EXPECT_THAT(short_step_sentence(fact_of(RescueStep::fade_dye)),
              HasSubstr("only once a residual-silver test"));
}

TEST(RescueSteps, NamePaperAlikeInFullAndInShort) {
  const auto on = fact_of(RescueStep::print_on, {1.08});
  const auto by_condenser = fact_of(RescueStep::print_on_by_condenser, {1.32});
  EXPECT_EQ(step_sentence(on), short_step_sentence(on));
  EXPECT_THAT(step_sentence(on), AllOf(HasSubstr("normal paper"), HasSubstr("R 110.")));
  EXPECT_THAT(step_sentence(by_condenser),
              AllOf(HasSubstr(" soft paper"), HasSubstr("R 130, counted for condenser light")));
}

TEST(RescueSteps, SayThatAnotherReportToldOne) {
  EXPECT_EQ(step_sentence({RescueStep::told, {}, {}, "Wash it."}), "Wash it.");
  EXPECT_EQ(short_step_sentence({RescueStep::print_on, {}, {}, "Print it."}), "Print it.");
  expect_sentence(step_sentence(fact_of(RescueStep::told)));
  expect_sentence(short_step_sentence(fact_of(RescueStep::told)));
}

// Harder paper for a flatter negative, each grade where its range lies nearest.
TEST(PrintingSentence, GoesFromHardToSoftAsTheRangeGrows) {
  const auto grade = [](double range) {
    const std::string said = printing_sentence(range, "");
    return said.substr(9, said.find(" paper") - 9);
  };
  EXPECT_EQ(grade(0.749), "very hard");
  EXPECT_EQ(grade(0.751), "hard");
  EXPECT_EQ(grade(0.999), "hard");
  EXPECT_EQ(grade(1.001), "normal");
  EXPECT_EQ(grade(1.199), "normal");
  EXPECT_EQ(grade(1.201), "soft");
  EXPECT_EQ(grade(1.449), "soft");
  EXPECT_EQ(grade(1.451), "very soft");
}

TEST(PrintingSentence, GivesTheRangeToTheNearestTen) {
  EXPECT_THAT(printing_sentence(1.049, ""), HasSubstr("R 100."));
  EXPECT_THAT(printing_sentence(1.051, ""), HasSubstr("R 110."));
}

TEST(AimSourceWords, TellEverySourceFromTheOthers) {
  std::set<std::string> sources;
  for (const FactRow<AimSource>& row : fact_rows<AimSource>()) {
    EXPECT_TRUE(sources.insert(aim_source_words({0.58, 0.05, row.kind, {}})).second) << row.code;
  }
  EXPECT_THAT(aim_source_words({0.58, 0.05, AimSource::option, {}}), HasSubstr("you gave"));
  EXPECT_THAT(aim_source_words({0.58, 0.05, AimSource::card, {}}), Not(HasSubstr("usual")));
  EXPECT_THAT(aim_source_words({0.58, 0.05, AimSource::scanning, "harbour"}),
              AllOf(StartsWith("the usual aim for scanning"), HasSubstr("\"harbour\"")));
}

}  // namespace
}  // namespace fogline
