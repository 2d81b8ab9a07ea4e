#include "record/invented_reports.h"
#include "terminal/spoken_text.h"
#include "terminal/text.h"
#include "words/screen_words.h"
#include "words/sections.h"

#include <string>

#include <gmock/gmock.h>
#include <gtest/gtest.h>

namespace fogline {
namespace {

using testing::HasSubstr;
using testing::IsEmpty;
using testing::Not;

TextOptions screen(int width = 80) {
  TextOptions options;
  options.width = width;
  options.page = "strip.report.html";
  return options;
}

std::string screen_of(const RollRecord& record, int width = 80) {
  return text_from_record(record, screen(width));
}

TEST(Screen, HoldsEveryReport) {
  for (const auto& [name, record] : invented::all_records()) {
    for (const int width : {80, 100, 200}) {
      EXPECT_LE(lines_of(screen_of(record, width)).size(), screen_lines) << name << " " << width;
    }
    TextOptions stops = screen();
    stops.units = DensityUnits::stops;
    EXPECT_LE(lines_of(text_from_record(record, stops)).size(), screen_lines) << name;
  }
}

TEST(Screen, IsUsedWhereThereIsMuchToTell) {
  EXPECT_GT(lines_of(screen_of(invented::crowded_record())).size(), screen_lines - 3);
}

TEST(Screen, KeepsToTheWidth) {
  for (const auto& [name, record] : invented::all_records()) {
    for (const int width : {40, 60, 80}) {
      for (const bool full : {false, true}) {
        TextOptions options = screen(width);
        options.full = full;
        for (const std::string& line : lines_of(text_from_record(record, options))) {
          EXPECT_LE(columns_of(line), width) << name << ": " << line;
          EXPECT_FALSE(line.ends_with(' ')) << name << ": " << line;
        }
      }
    }
  }
}

TEST(Screen, SaysNothingTwice) {
  for (const auto& [name, record] : invented::all_records()) {
    EXPECT_THAT(told_twice(screen_of(record)), IsEmpty()) << name;
    TextOptions whole = screen();
    whole.full = true;
    const std::string all = text_from_record(record, whole);
    // How each scan was measured is told by itself.
    const std::string::size_type method = all.find("How it was measured\n");
    EXPECT_THAT(told_twice(record.measurement.scans.size() > 1 ? all.substr(0, method) : all),
                IsEmpty())
        << name;
  }
}

TEST(Screen, GoesFromTheVerdictToWhereTheRestIs) {
  const std::string text = screen_of(invented::short_record());
  std::size_t last = 0;
  for (const char* title :
       {"In one breath\n", "Do tonight\n", "Next roll\n", "The roll in numbers\n",
        "How far to trust them\n", "All of it: strip.report.html, or here with --full.\n"}) {
    const std::size_t at = text.find(title);
    ASSERT_NE(at, std::string::npos) << title;
    EXPECT_GE(at, last) << title;
    last = at;
  }
  EXPECT_TRUE(text.ends_with("--full.\n"));
}

TEST(Screen, NamesNoPageWhereNoneWasWritten) {
  TextOptions options = screen();
  options.page.reset();
  const std::string text = text_from_record(invented::short_record(), options);
  EXPECT_THAT(text, HasSubstr("All of it: with --full."));
  EXPECT_THAT(text, Not(HasSubstr("html")));
}

TEST(Screen, TellsTheNumbersOfTheRoll) {
  const std::string text = screen_of(invented::short_record(), 200);
  for (const char* row :
       {"  base plus fog  0.28 ± 0.03         read on the rebate\n",
        "  tint           0.08 ± 0.02         dye left\n",
        "  shadow         0.38 ± 0.03         median of 3 frames, 0.10 ± 0.02 above base plus "
        "fog\n",
        "  range          0.98 ± 0.12         asks for paper of about log range 0.98\n"}) {
    const std::string squeezed = unwrapped(row);
    EXPECT_THAT(unwrapped(text), HasSubstr(squeezed));
  }
  EXPECT_THAT(unwrapped(text), HasSubstr("marks 5"));
}

TEST(Screen, LeavesOutOfTheNumbersWhatTheVerdictTold) {
  const std::string told = screen_of(invented::short_record());
  EXPECT_EQ(told.find("0.42 ± 0.08"), told.rfind("0.42 ± 0.08"));
  const std::string untold = unwrapped(screen_of(invented::undecided_record()));
  EXPECT_THAT(untold, HasSubstr("contrast index 0.48 ± 0.16 aim 0.58 ± 0.05"));
  EXPECT_THAT(untold, HasSubstr("light −0.6 ± 1.1 stops from the usual placement"));
}

TEST(Screen, ABracketTellsItsOwnNumbers) {
  const std::string text = unwrapped(screen_of(invented::bracket_record()));
  EXPECT_THAT(text, HasSubstr("exposures 11 through which the curve runs"));
  EXPECT_THAT(text, HasSubstr("exposure index"));
  EXPECT_THAT(text, HasSubstr("ISO range by diffusion light"));
  EXPECT_THAT(text, Not(HasSubstr("median of")));
}

TEST(Screen, LeavesTheLeastWeightyOutFirst) {
  const std::string text = screen_of(invented::crowded_record());
  EXPECT_THAT(text, HasSubstr("Next roll"));
  EXPECT_THAT(text, HasSubstr("Gloves, guarded eyes, fresh air"));
  EXPECT_THAT(text, HasSubstr("Weighty 0 "));
  EXPECT_THAT(text, Not(HasSubstr("Note 0 ")));
  EXPECT_THAT(text, Not(HasSubstr("Doubt 0 ")));
  EXPECT_THAT(text, Not(HasSubstr("Weighty 19 ")));
}

TEST(Screen, TellsTonightsStepsInShort) {
  const std::string text = unwrapped(screen_of(invented::short_record()));
  EXPECT_THAT(text, HasSubstr("3 minutes in fresh fixer at about 20 °C, then the full wash."));
  EXPECT_THAT(text, Not(HasSubstr("left dye harms nothing")));
  TextOptions whole = screen();
  whole.full = true;
  EXPECT_THAT(unwrapped(text_from_record(invented::short_record(), whole)),
              HasSubstr("left dye harms nothing"));
}

TEST(Screen, OfAnUnfitScanTellsTheCure) {
  const std::string text = screen_of(invented::record(invented::unfit_roll()));
  EXPECT_THAT(text, HasSubstr("Unfit: nothing can be measured"));
  EXPECT_THAT(text, HasSubstr("No film was found"));
  EXPECT_THAT(text, HasSubstr("How to scan better\n"));
  EXPECT_THAT(text, HasSubstr("fogline help scanning"));
  EXPECT_THAT(text, Not(HasSubstr("The roll in numbers")));
  // A good one has no room for it.
  EXPECT_THAT(screen_of(invented::short_record()), Not(HasSubstr("How to scan better")));
}

TEST(Screen, OfSeveralScansSaysForWhichACautionIs) {
  const std::string text = unwrapped(screen_of(invented::several_record()));
  EXPECT_THAT(text, HasSubstr("! gone.tif can't be opened (No such file or directory)"));
  EXPECT_THAT(text, HasSubstr("! second.tif: Much stray light reaches the sensor."));
  EXPECT_THAT(text, HasSubstr("! strip.tif and second.tif: The file doesn't tell how"));
}

TEST(Screen, TheBudgetFollowsIt) {
  RollRecord record = invented::short_record();
  DoubtBudget budget;
  budget.number = "base_fog";
  budget.quantity = invented::density(0.28, 0.03);
  budget.lines = {{DoubtSource::noise, 0.005}};
  record.measurement.scans.front().budgets = {budget};
  TextOptions options = screen();
  options.budget = true;
  const std::string text = text_from_record(record, options);
  EXPECT_LT(text.find("--full."), text.find("Where each doubt comes from\n"));
  EXPECT_TRUE(text.starts_with(text_from_record(record, screen())));
  options.full = true;
  EXPECT_THAT(text_from_record(record, options), HasSubstr("Where each doubt comes from\n"));
  options.budget = false;
  EXPECT_THAT(text_from_record(record, options), Not(HasSubstr("Where each doubt comes from")));
}

TEST(Screen, ABudgetOfNothingSaysSo) {
  TextOptions options = screen();
  options.budget = true;
  EXPECT_THAT(text_from_record(invented::record(invented::unfit_roll()), options),
              HasSubstr("No density was told, so there is no doubt to break up."));
}

TEST(Screen, TellsADoubtOnceThatACautionTells) {
  RollRecord record = invented::record(invented::roll());
  ScanMeasurement& scan = record.measurement.scans.front();
  scan.veiling_glare = Unknown::nothing_opaque;
  const char* doubt = "Nothing opaque is in sight by which stray light could be told.";
  EXPECT_THAT(unwrapped(screen_of(record)), HasSubstr(doubt));
  scan.cautions.push_back({Severity::note, fact_of(CautionKind::glare_unknown)});
  EXPECT_THAT(unwrapped(screen_of(record)), Not(HasSubstr(doubt)));
  EXPECT_THAT(unwrapped(screen_of(record)), HasSubstr("a usual amount was taken away"));
}

TEST(Screen, ARecipeStandsBesideTheSafetyLine) {
  EXPECT_THAT(screen_of(invented::record(invented::roll())), Not(HasSubstr("Gloves")));
  const std::string advised = screen_of(invented::short_record());
  EXPECT_THAT(advised, HasSubstr("Gloves, guarded eyes"));
  EXPECT_EQ(advised.find("Gloves"), advised.rfind("Gloves"));
}

TEST(Screen, LetsNoNameCommandTheTerminal) {
  RollRecord record = invented::hostile_record();
  for (std::string* text : {&record.measurement.scans.front().info.file, &record.card->name,
                            &record.measurement.scans.front().cautions.front().fact.told,
                            &record.judgement.advice->this_roll.front().told,
                            &record.measurement.unread.front().why.names.front()}) {
    *text += "\x1b[2J\xC2\x9B";
  }
  for (const bool full : {false, true}) {
    TextOptions options = screen();
    options.full = full;
    options.page = "page\x1b[2J.html";
    const std::string text = text_from_record(record, options);
    EXPECT_THAT(text, Not(HasSubstr("\x1b")));
    EXPECT_THAT(text, Not(HasSubstr("\xC2\x9B")));
  }
}

TEST(WholeText, HasTheSectionsOfTheListInItsOrder) {
  for (const auto& [name, record] : invented::all_records()) {
    TextOptions options = screen();
    options.full = true;
    const std::string text = "\n" + text_from_record(record, options);
    std::size_t last = 0;
    for (const Section& section : sections_of(record)) {
      const bool may_be_missing =
          section.id == SectionId::tonight_whole || section.id == SectionId::budget ||
          section.id == SectionId::cautions || section.id == SectionId::strip ||
          section.id == SectionId::unsure || section.id == SectionId::trust;
      const std::size_t at = text.find("\n" + std::string(section.title) + "\n", last);
      if (!may_be_missing) {
        EXPECT_NE(at, std::string::npos) << name << ": " << section.title;
      }
      last = at == std::string::npos ? last : at;
    }
  }
}

TEST(WholeText, EveryHeadingHasSomethingBelowIt) {
  for (const auto& [name, record] : invented::all_records()) {
    TextOptions options = screen();
    for (const bool full : {false, true}) {
      options.full = full;
      const std::vector<std::string> lines = lines_of(text_from_record(record, options));
      for (std::size_t i = 0; i < lines.size(); ++i) {
        if (!lines[i].empty() && lines[i].front() != ' ') {
          ASSERT_LT(i + 1, lines.size()) << name << ": " << lines[i];
          EXPECT_TRUE(lines[i + 1].starts_with("  ")) << name << ": " << lines[i];
        }
      }
    }
  }
}

TEST(WholeText, ANarrowTerminalGetsAListInsteadOfATable) {
  TextOptions options = screen(60);
  options.full = true;
  const std::string text = unwrapped(text_from_record(invented::short_record(), options));
  EXPECT_THAT(text, HasSubstr("- 2: shadow 0.41 ± 0.03, middle 0.83 ± 0.05, highlight 1.42 ± "
                              "0.12, range 1.01 ± 0.11, paper 1.0"));
  EXPECT_THAT(text, HasSubstr("- 1: drying mark, 2.2 mm, denser by 0.12, 93 %"));
}

}  // namespace
}  // namespace fogline
