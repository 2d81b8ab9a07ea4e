#include "page/html.h"
#include "page/page_tree.h"
#include "page/small_picture.h"
#include "record/invented_reports.h"
#include "words/sections.h"

#include <algorithm>
#include <set>
#include <string>
#include <vector>

#include <gmock/gmock.h>
#include <gtest/gtest.h>

namespace fogline {
namespace {

using page_tree::Node;
using page_tree::parsed;
using testing::HasSubstr;
using testing::Not;

std::string page_of(const RollRecord& record, HtmlOptions options = {}) {
  const std::vector<PagePicture> pictures(record.measurement.scans.size(), small_picture());
  return html_from_record(record, pictures, options);
}

std::vector<std::string> titles_of(const Node& page) {
  std::vector<std::string> titles;
  for (const Node* section : page.all("section")) {
    titles.push_back(section->children.front().text);
  }
  return titles;
}

bool has_section(const RollRecord& record, const std::string& title) {
  const std::vector<std::string> titles = titles_of(parsed(page_of(record)));
  return std::find(titles.begin(), titles.end(), title) != titles.end();
}

TEST(PageSections, EveryKindOfPageIsWellFormed) {
  for (const auto& [name, record] : invented::all_records()) {
    EXPECT_NO_THROW(parsed(page_of(record))) << name;
    EXPECT_NO_THROW(parsed(page_of(record, {DensityUnits::stops}))) << name;
    EXPECT_NO_THROW(parsed(html_from_record(record, {}, {}))) << name;
  }
}

TEST(PageSections, EveryLinkLeadsSomewhereAndNoNameIsGivenTwice) {
  for (const auto& [name, record] : invented::all_records()) {
    const Node page = parsed(page_of(record));
    std::set<std::string> names;
    for (const Node* node : page.all()) {
      if (!node->attribute("id").empty()) {
        EXPECT_TRUE(names.insert(node->attribute("id")).second) << node->attribute("id");
      }
    }
    for (const Node* node : page.all()) {
      const std::string way = node->attribute("href");
      if (way.starts_with('#') && way != "#baths") {
        EXPECT_TRUE(names.contains(way.substr(1))) << name << " " << way;
      }
    }
  }
}

// The list of words/sections rules: what it says is there is there, in its order, and nothing else.
TEST(PageSections, StandInTheOrderOfTheList) {
  for (const auto& [name, record] : invented::all_records()) {
    std::vector<std::string> expected;
    for (const Section& section : sections_of(record)) {
      const bool elsewhere = section.id == SectionId::verdict || section.id == SectionId::tonight ||
                             section.id == SectionId::next_roll ||
                             section.id == SectionId::budget || section.id == SectionId::cautions;
      if (!elsewhere) {
        expected.emplace_back(section.title);
      }
    }
    EXPECT_EQ(titles_of(parsed(page_of(record))), expected) << name;
  }
}

TEST(PageSections, HaveSomethingBelowTheirTitle) {
  for (const auto& [name, record] : invented::all_records()) {
    const Node page = parsed(page_of(record));
    for (const Node* section : page.all("section")) {
      EXPECT_GT(section->text.size(), section->children.front().text.size() + 5)
          << name << ": " << section->children.front().text;
    }
  }
}

TEST(PageSections, CauseAndEvidenceNeedAScan) {
  for (const char* title : {"Light or time?", "Marks", "Clear film", "How it was measured"}) {
    EXPECT_TRUE(has_section(invented::short_record(), title)) << title;
    EXPECT_FALSE(has_section(invented::unread_record(), title)) << title;
  }
  EXPECT_TRUE(has_section(invented::unread_record(), "Can this scan be trusted?"));
  EXPECT_FALSE(has_section(invented::record(RollMeasurement{}), "Can this scan be trusted?"));
}

TEST(PageSections, FramesOfATargetAreNoPictures) {
  EXPECT_TRUE(has_section(invented::short_record(), "Shadow and highlight"));
  EXPECT_FALSE(has_section(invented::bracket_record(), "Shadow and highlight"));
}

TEST(PageSections, ACurveNeedsATargetOrTheReasonWhyThereIsNone) {
  EXPECT_TRUE(has_section(invented::bracket_record(), "The curve"));
  EXPECT_FALSE(has_section(invented::short_record(), "The curve"));
  RollRecord record = invented::short_record();
  record.measurement.target_cautions.push_back(
      {Severity::caution, fact_of(CautionKind::metered_frame_missing, {3.0})});
  EXPECT_TRUE(has_section(record, "The curve"));
}

TEST(PageSections, AdviceIsToldOnlyWhereItIsGiven) {
  const Node with = parsed(page_of(invented::short_record()));
  EXPECT_EQ(with.of_class("tonight").size(), 1U);
  EXPECT_EQ(with.of_class("next").size(), 1U);
  const Node without = parsed(page_of(invented::record(invented::roll())));
  EXPECT_TRUE(without.of_class("todo").empty());
  RollRecord nothing_tonight = invented::normal_record();
  nothing_tonight.judgement.advice->this_roll.clear();
  const Node next_alone = parsed(page_of(nothing_tonight));
  EXPECT_TRUE(next_alone.of_class("tonight").empty());
  EXPECT_EQ(next_alone.of_class("next").size(), 1U);
}

TEST(PageSections, ReasonsOfTheRecipeAreToldOnceAndWithoutCautions) {
  RollRecord record = invented::short_record();
  Advice& advice = *record.judgement.advice;
  const Fact<BathReason> reason{BathReason::stop_enough, {}, {}, "It is enough for any film."};
  advice.stop.reasons = {reason};
  advice.fix.reasons = {reason, {BathReason::handle_with_care, {}, {}, "With any bath: gloves."}};
  const std::string page = page_of(record);
  EXPECT_THAT(page, HasSubstr("It is enough for any film."));
  EXPECT_EQ(page.find(reason.told), page.rfind(reason.told));
  EXPECT_THAT(page, Not(HasSubstr("With any bath")));
}

TEST(PageSections, WithoutAReasonThereIsNoSectionOfBaths) {
  RollRecord record = invented::normal_record();
  Advice& advice = *record.judgement.advice;
  advice.development.reasons.clear();
  advice.fix.reasons.clear();
  EXPECT_FALSE(has_section(record, "Your baths"));
}

TEST(PageSections, TheBudgetIsFoldedIntoTrust) {
  RollRecord record = invented::short_record();
  EXPECT_THAT(page_of(record), Not(HasSubstr("Where each doubt comes from")));
  DoubtBudget budget;
  budget.number = "base_fog";
  budget.quantity = invented::density(0.28, 0.03);
  budget.lines = {{DoubtSource::noise, 0.005}};
  record.measurement.scans.front().budgets = {budget};
  const Node page = parsed(page_of(record));
  const auto folds = page.all("details");
  ASSERT_EQ(folds.size(), 1U);
  EXPECT_THAT(folds.front()->text, HasSubstr("Where each doubt comes from"));
  EXPECT_THAT(folds.front()->text, HasSubstr("base plus fog0.28 ± 0.030.010"));
}

TEST(PageSections, NamesFilesOnlyWhereThereAreSeveral) {
  const Node one = parsed(page_of(invented::short_record()));
  const Node several = parsed(page_of(invented::several_record()));
  const auto names_in = [](const Node& page, const std::string& title) {
    for (const Node* section : page.all("section")) {
      if (section->children.front().text == title) {
        return section->text.find("strip.tif") != std::string::npos;
      }
    }
    return false;
  };
  for (const char* title : {"Clear film", "Shadow and highlight"}) {
    EXPECT_FALSE(names_in(one, title)) << title;
    EXPECT_TRUE(names_in(several, title)) << title;
  }
}

TEST(PageSections, SaysWhatIsMissingOfEachScan) {
  const Node page = parsed(page_of(invented::several_record()));
  EXPECT_THAT(page.text, HasSubstr("Base plus fog isn't known. No bare light path is in sight"));
  EXPECT_THAT(page.text,
              HasSubstr("second.tif: Seen at 12 pixels a millimetre only large plain marks"));
  EXPECT_THAT(
      page.text,
      HasSubstr("gone.tif: not read. gone.tif can't be opened (No such file or directory)"));
  EXPECT_THAT(page.text, HasSubstr("white.png: No mark was found."));
}

TEST(PageSections, MarkWeightyCautionsAndNoNotes) {
  const Node page = parsed(page_of(invented::several_record()));
  const auto weighty = page.of_class("weighty");
  // The first scan's, two of the second, that of the unfit one.
  ASSERT_EQ(weighty.size(), 4U);
  EXPECT_THAT(weighty.front()->text, HasSubstr("The file doesn't tell how its codes"));
}

TEST(PageSections, CountMarksThatHaveNoNumber) {
  RollRecord record = invented::short_record();
  std::vector<Mark>& marks = record.measurement.scans.front().marks;
  for (int i = 0; i < 30; ++i) {
    marks.push_back(invented::mark(MarkKind::dust, {30.0 * i, 20.0, 4.0, 4.0}, 0.3, 0.5, 0.6));
  }
  const Node page = parsed(page_of(record));
  EXPECT_THAT(page.text, HasSubstr("Less telling, outlined without a number: 11 pieces of dust."));
}

TEST(PageSections, TellFramesApartThatAreNoWholePictures) {
  RollRecord record = invented::short_record();
  auto& frames = record.measurement.scans.front().frames;
  frames[0].cut = true;
  frames[1].inferred = true;
  frames[2].repeats_frame = 1;
  const Node page = parsed(page_of(record));
  for (const char* words : {"1 (cut)", "2 (blank?)", "3 (1 again)"}) {
    EXPECT_THAT(page.text, HasSubstr(words));
  }
  EXPECT_EQ(page.of_class("faintly").size(), 3U);
}

TEST(PageSections, LetNoNameBecomeATag) {
  const RollRecord record = invented::hostile_record();
  const Node page = parsed(page_of(record));
  EXPECT_TRUE(page.all("x").empty());
  const std::string bad(invented::hostile);
  for (const char* where :
       {"card name ", "card film ", "card date ", "file ", "caution ", "reason ", "mark reason ",
        "frame reason ", "unread file ", "unread message ", "aim ", "evidence ", "finding ",
        "finding evidence ", "step ", "recipe reason "}) {
    EXPECT_THAT(page.text, HasSubstr(where + bad)) << where;
  }
  const auto labelled = page.of_class("panel");
  ASSERT_EQ(labelled.size(), 1U);
  EXPECT_THAT(labelled.front()->attribute("aria-label"), HasSubstr("file " + bad));
}

TEST(PageSections, LetNoNameOfAnExposureBecomeATag) {
  RollRecord record = invented::bracket_record();
  const std::string bad(invented::hostile);
  record.measurement.sensitometry->curve.steps.front().label = "label " + bad;
  record.measurement.sensitometry->curve.steps.front().left_out = invented::reason("left " + bad);
  record.measurement.target_cautions.push_back(
      invented::caution(Severity::caution, "target " + bad));
  const Node page = parsed(page_of(record));
  EXPECT_TRUE(page.all("x").empty());
  for (const char* where : {"label ", "left ", "target "}) {
    EXPECT_THAT(page.text, HasSubstr(where + bad)) << where;
  }
}

TEST(PageSections, KeepAValueWithItsDoubtOnOneLine) {
  const std::string page = page_of(invented::short_record());
  EXPECT_THAT(page, HasSubstr("0.42&nbsp;±&nbsp;0.08"));
  EXPECT_THAT(page, HasSubstr("<span class=\"nb\">--transfer linear</span>"));
}

}  // namespace
}  // namespace fogline
