#include "words/caution_words.h"
#include "words/unknown_words.h"

#include <set>
#include <string>

#include <gmock/gmock.h>
#include <gtest/gtest.h>

namespace fogline {
namespace {

using testing::HasSubstr;
using testing::Not;
using testing::StartsWith;

/// A fact with a number and a name for each that its row lists.
template <typename Kind>
Fact<Kind> filled_fact(const FactRow<Kind>& row) {
  Fact<Kind> fact = fact_of(row.kind);
  for (const std::string_view name : row.numbers) {
    if (!name.empty()) {
      fact.numbers.push_back(3.0);
    }
  }
  for (const std::string_view name : row.names) {
    if (!name.empty()) {
      fact.names.emplace_back("wedge.csv");
    }
  }
  return fact;
}

template <typename Kind>
void expect_codes_of_their_own() {
  std::set<std::string_view> codes;
  for (const FactRow<Kind>& row : fact_rows<Kind>()) {
    EXPECT_TRUE(codes.insert(row.code).second) << row.code;
    EXPECT_EQ(row.code.find_first_not_of("abcdefghijklmnopqrstuvwxyz-"), std::string_view::npos)
        << row.code;
  }
}

TEST(FactTables, GiveEachReasonACodeAndWords) {
  expect_codes_of_their_own<Unknown>();
  ASSERT_EQ(unknown_words().size(), fact_rows<Unknown>().size());
  for (const FactRow<Unknown>& row : fact_rows<Unknown>()) {
    const std::string sentence = unknown_sentence(filled_fact(row));
    EXPECT_GT(sentence.size(), 10U) << row.code;
    EXPECT_THAT(sentence, Not(HasSubstr("{"))) << row.code;
  }
}

TEST(FactTables, GiveEachCautionACodeAndWords) {
  expect_codes_of_their_own<CautionKind>();
  ASSERT_EQ(caution_words().size(), fact_rows<CautionKind>().size());
  for (const FactRow<CautionKind>& row : fact_rows<CautionKind>()) {
    const std::string sentence =
        caution_sentence({Severity::note, filled_fact(row), fact_of(Unknown::bracket_fits_turned)});
    EXPECT_GT(sentence.size(), 10U) << row.code;
    EXPECT_THAT(sentence, Not(HasSubstr("{"))) << row.code;
    EXPECT_TRUE(sentence.ends_with('.')) << row.code;
  }
}

TEST(FactTables, KeepTheCodesThatReportsPublish) {
  EXPECT_EQ(caution_code(CautionKind::transparency_unused), "extra-channel");
  EXPECT_EQ(caution_code(CautionKind::channels_unused), "extra-channel");
  EXPECT_EQ(caution_code(CautionKind::no_film), "no-negative");
  EXPECT_EQ(caution_code(CautionKind::no_frames), "no-negative");
  EXPECT_EQ(caution_code(CautionKind::glare_of_calibration), "glare-unknown");
  EXPECT_EQ(caution_code(CautionKind::scanner_zero), "scanner-zero");
}

TEST(FactTables, SayNumbersAsPrintShowsThem) {
  EXPECT_EQ(unknown_sentence(fact_of(Unknown::needs_less_exposure, {-3.127, -2.004})),
            "it needs the curve from log H \u22123.13, and the least exposure is \u22122.00");
  EXPECT_EQ(unknown_sentence(fact_of(Unknown::printed_steps_too_many, {23.0, 21.0}, {"a.csv"})),
            "it shows 23 steps, but a.csv has 21");
  EXPECT_EQ(caution_sentence({Severity::caution, fact_of(CautionKind::scanner_zero, {0.0471})}),
            "The bare light reads 0.05 in density off that of the calibration: another exposure or "
            "other levels; scan wedge and film with the very same settings.");
  EXPECT_THAT(
      caution_sentence({Severity::caution, fact_of(CautionKind::steps_clipped, {1.0, 2.0, 5.0})}),
      HasSubstr("step 1, 2 and 5."));
}

TEST(FactTables, PassOnWhatLiesBehindACaution) {
  EXPECT_EQ(caution_sentence({Severity::caution, fact_of(CautionKind::target_unread),
                              fact_of(Unknown::one_exposed_step, {5.0})}),
            "No characteristic curve: only 1 exposed step can be used and a curve needs 5.");
  EXPECT_THAT(
      caution_sentence({Severity::caution, fact_of(CautionKind::bracket_ambiguous),
                        fact_of(Unknown::bracket_fits_shifted)}),
      StartsWith("The bracket fits the exposures on the card another way as well (beginning "
                 "with another frame): tell first_frame"));
}

TEST(FactTables, SayWhatAnOldReportTold) {
  EXPECT_EQ(caution_sentence({Severity::note, {CautionKind::grey_scan, {}, {}, "Grey."}}), "Grey.");
  EXPECT_EQ(told_reason(Known<double>(WhyUnknown{Unknown::not_told, {}, {}, "Lost."})), "Lost.");
  EXPECT_EQ(told_reason(Known<double>()), "");
  EXPECT_EQ(told_reason(Known<double>(1.0)), "");
}

}  // namespace
}  // namespace fogline
