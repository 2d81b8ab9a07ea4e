#include "words/caution_words.h"

#include "said.h"

#include <algorithm>
#include <set>
#include <string>

#include <gmock/gmock.h>
#include <gtest/gtest.h>

namespace fogline {
namespace {

using testing::EndsWith;
using testing::HasSubstr;
using testing::StartsWith;

Caution caution_of(CautionKind kind, double number) {
  Caution caution{Severity::caution, fact_of(kind), fact_of(Unknown::bracket_fits_turned)};
  for (const std::string_view name : fact_row(kind).numbers) {
    if (!name.empty()) {
      caution.fact.numbers.push_back(number);
    }
  }
  return caution;
}

// Cautions of one code differ in what they advise, so their sentences differ too.
TEST(CautionSentences, AreEachAnother) {
  std::set<std::string> sentences;
  for (const FactRow<CautionKind>& row : fact_rows<CautionKind>()) {
    const std::string said = caution_sentence(caution_of(row.kind, 3.0));
    EXPECT_EQ(fault_of(std::string_view(said)), "") << said;
    EXPECT_TRUE(sentences.insert(said).second) << said;
  }
}

TEST(CautionSentences, SayEachNumberOfTheirFact) {
  for (const FactRow<CautionKind>& row : fact_rows<CautionKind>()) {
    Caution caution = caution_of(row.kind, 2.0);
    const std::string before = caution_sentence(caution);
    for (double& number : caution.fact.numbers) {
      number = 9.0;
      EXPECT_NE(caution_sentence(caution), before) << row.code;
      number = 2.0;
    }
  }
}

TEST(CautionSentences, ListStepsAsPeopleDo) {
  const auto list = [](const std::vector<double>& steps) {
    return caution_sentence({Severity::caution, fact_of(CautionKind::steps_left_out, steps)});
  };
  EXPECT_THAT(list({4.0}), HasSubstr("others: step 4. "));
  EXPECT_THAT(list({4.0, 7.0}), HasSubstr("others: step 4 and 7. "));
  EXPECT_THAT(list({4.0, 7.0, 12.0}), HasSubstr("others: step 4, 7 and 12. "));
}

TEST(CautionSentences, BeginOrGoOnWithTheReason) {
  const Caution unfit{Severity::caution, fact_of(CautionKind::profile_unfit),
                      fact_of(Unknown::profile_damaged)};
  EXPECT_THAT(caution_sentence(unfit), HasSubstr("can't be used: it is damaged. "));
  const Caution ambiguous{Severity::caution, fact_of(CautionKind::bracket_ambiguous),
                          fact_of(Unknown::bracket_fits_turned)};
  EXPECT_THAT(caution_sentence(ambiguous), StartsWith("The bracket fits"));
}

// Whoever reads that a scan is of no use reads what to do instead.
TEST(CautionSentences, SayHowToScanAgainWhereAScanIsOfNoUse) {
  for (const CautionKind kind : {CautionKind::inverted, CautionKind::base_clipped,
                                 CautionKind::no_clear_film, CautionKind::bare_light_clipped}) {
    EXPECT_THAT(caution_sentence(caution_of(kind, 1.0)),
                testing::ContainsRegex("[Ss]can( it)? again"))
        << caution_code(kind);
  }
  EXPECT_THAT(caution_sentence(caution_of(CautionKind::no_film, 1.0)),
              HasSubstr("Scan the negative as a transparency"));
  EXPECT_THAT(caution_sentence(caution_of(CautionKind::transfer_unknown, 1.0)),
              HasSubstr("--transfer"));
}

TEST(CautionSentences, SayWhichLightIsWished) {
  for (const CautionKind kind : {CautionKind::base_clipped, CautionKind::bare_light_clipped}) {
    EXPECT_THAT(caution_sentence(caution_of(kind, 1.0)), EndsWith("80 to 95 % of full scale."));
  }
}

}  // namespace
}  // namespace fogline
