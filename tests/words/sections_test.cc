#include "words/sections.h"

#include "record/invented_reports.h"

#include <algorithm>
#include <set>

#include <gmock/gmock.h>
#include <gtest/gtest.h>

namespace fogline {
namespace {

using testing::ElementsAre;

std::vector<SectionId> ids_of(const JudgedRoll& roll) {
  std::vector<SectionId> ids;
  for (const Section& section : sections_of(roll)) {
    ids.push_back(section.id);
  }
  return ids;
}

bool has(const JudgedRoll& roll, SectionId id) {
  const auto ids = ids_of(roll);
  return std::find(ids.begin(), ids.end(), id) != ids.end();
}

TEST(Sections, StandInTheirOrderAndOnce) {
  for (const auto& [name, record] : invented::all_records()) {
    std::vector<SectionId> ids = ids_of(record);
    if (tells_little(record.measurement)) {
      // How to scan better goes before all that was measured.
      const auto better = std::find(ids.begin(), ids.end(), SectionId::better_scanning);
      ASSERT_NE(better, ids.end()) << name;
      EXPECT_EQ(*(better + 1), SectionId::strip) << name;
      ids.erase(better);
    }
    EXPECT_TRUE(std::is_sorted(ids.begin(), ids.end())) << name;
    EXPECT_EQ(std::set<SectionId>(ids.begin(), ids.end()).size(), ids.size()) << name;
  }
}

TEST(Sections, HaveTitlesAndAnchorsOfTheirOwn) {
  std::set<std::string_view> anchors;
  for (int id = 0; id <= static_cast<int>(SectionId::cautions); ++id) {
    const Section& section = section_of(static_cast<SectionId>(id));
    EXPECT_EQ(static_cast<int>(section.id), id);
    EXPECT_FALSE(section.title.empty());
    if (!section.anchor.empty()) {
      EXPECT_TRUE(anchors.insert(section.anchor).second) << section.anchor;
    }
  }
}

TEST(Sections, OfNothingAreTheVerdictAndHowToGoOn) {
  EXPECT_THAT(ids_of(invented::record(RollMeasurement{})),
              ElementsAre(SectionId::verdict, SectionId::strip, SectionId::better_scanning,
                          SectionId::cautions));
  EXPECT_TRUE(has(invented::unread_record(), SectionId::trust));
  EXPECT_FALSE(has(invented::unread_record(), SectionId::method));
}

// Advice about baths never stands without the cautions of baths.
TEST(Sections, HaveCautionsWithAllAdvice) {
  for (const auto& [name, record] : invented::all_records()) {
    EXPECT_EQ(sections_of(record).back().id, SectionId::cautions) << name;
    EXPECT_EQ(has(record, SectionId::next_roll), record.judgement.advice.has_value()) << name;
  }
}

TEST(Sections, ShowTonightWhereThereIsSomethingToDo) {
  RollRecord record = invented::short_record();
  EXPECT_TRUE(has(record, SectionId::tonight));
  EXPECT_TRUE(has(record, SectionId::tonight_whole));
  // A caution alone is nothing to do.
  record.judgement.advice->this_roll = {fact_of(RescueStep::handle_with_care)};
  EXPECT_FALSE(has(record, SectionId::tonight));
  EXPECT_FALSE(has(record, SectionId::tonight_whole));
}

TEST(Sections, TellTonightInFullOnlyWhereTheShortListIsShorter) {
  Advice advice;
  advice.this_roll = {fact_of(RescueStep::nothing_needed)};
  EXPECT_FALSE(tonight_goes_on(advice));
  advice.this_roll = {fact_of(RescueStep::blow_off_dust)};
  EXPECT_TRUE(tonight_goes_on(advice));
  advice.this_roll.assign(short_list_steps, fact_of(RescueStep::nothing_needed));
  EXPECT_FALSE(tonight_goes_on(advice));
  advice.this_roll.push_back(fact_of(RescueStep::nothing_needed));
  EXPECT_TRUE(tonight_goes_on(advice));
}

TEST(Sections, ShowFramesOnlyOfPictures) {
  EXPECT_TRUE(has(invented::normal_record(), SectionId::frames));
  EXPECT_FALSE(has(invented::bracket_record(), SectionId::frames));
  EXPECT_TRUE(has(invented::bracket_record(), SectionId::curve));
  EXPECT_FALSE(has(invented::normal_record(), SectionId::curve));
}

TEST(Sections, ShowWhyLightAndTimeWereNotWeighed) {
  RollRecord record = invented::record(invented::roll());
  EXPECT_FALSE(has(record, SectionId::light_or_time));
  record.judgement.light_or_time.causes = Unknown::no_picture;
  EXPECT_TRUE(has(record, SectionId::light_or_time));
  record.judgement.light_or_time.causes = {};
  record.judgement.findings = {finding_of(Cause::drift, 0.4)};
  EXPECT_TRUE(has(record, SectionId::light_or_time));
}

TEST(Sections, ShowBudgetsWhereADoubtWasBrokenUp) {
  RollRecord record = invented::normal_record();
  EXPECT_FALSE(has(record, SectionId::budget));
  record.measurement.scans.front().budgets = {{"base_fog", {}, {}}};
  EXPECT_TRUE(has(record, SectionId::budget));
}

TEST(Sections, KnowScansThatTellLittle) {
  RollMeasurement roll = invented::roll();
  for (const Fitness fitness : {Fitness::measured, Fitness::comparable, Fitness::indicative,
                                Fitness::relative, Fitness::marks_only, Fitness::unfit}) {
    roll.scans.front().fitness = fitness;
    EXPECT_EQ(tells_little(roll), fitness >= Fitness::marks_only);
  }
  EXPECT_FALSE(tells_little(RollMeasurement{}));
}

}  // namespace
}  // namespace fogline
