#include "words/evidence_words.h"

#include "one_of_each.h"

#include <set>
#include <string>

#include <gmock/gmock.h>
#include <gtest/gtest.h>

namespace fogline {
namespace {

using testing::ElementsAre;
using testing::HasSubstr;
using testing::StartsWith;

TEST(EvidenceSentences, AreEachAnother) {
  std::set<std::string> sentences;
  for (const Fact<Evidence>& seen : one_of_each<Evidence>()) {
    EXPECT_TRUE(sentences.insert(evidence_sentence(seen)).second) << evidence_sentence(seen);
  }
  std::set<std::string_view> measurements;
  for (const FactRow<FurtherMeasurement>& row : fact_rows<FurtherMeasurement>()) {
    EXPECT_TRUE(measurements.insert(measurement_sentence(row.kind)).second) << row.code;
  }
}

// A lower bound is said as one, with everything else the same.
TEST(EvidenceSentences, SayAtLeastOfALowerBoundAlone) {
  constexpr std::string_view bound = "-at-least";
  const auto rows = fact_rows<Evidence>();
  const std::vector<Fact<Evidence>> all = one_of_each<Evidence>();
  int bounds = 0;
  for (std::size_t i = 0; i < all.size(); ++i) {
    std::string said = evidence_sentence(all[i]);
    const std::string_view code = rows[i].code;
    EXPECT_EQ(said.find("at least") != std::string::npos, code.ends_with(bound)) << said;
    if (code.ends_with(bound)) {
      ++bounds;
      ASSERT_EQ(rows[i - 1].code, code.substr(0, code.size() - bound.size()));
      said.erase(said.find("at least "), 9);
      EXPECT_EQ(said, evidence_sentence(all[i - 1]));
    }
  }
  EXPECT_EQ(bounds, 5);
}

// Every number of a fact reaches the reader.
TEST(EvidenceSentences, SayEachNumberOfTheirFact) {
  for (const FactRow<Evidence>& row : fact_rows<Evidence>()) {
    Fact<Evidence> fact = fact_of(row.kind);
    for (const std::string_view name : row.numbers) {
      if (!name.empty()) {
        fact.numbers.push_back(2.0);
      }
    }
    const std::string before = row.code == "told" ? "" : evidence_sentence(fact);
    for (double& number : fact.numbers) {
      number = 7.0;
      EXPECT_NE(evidence_sentence(fact), before) << row.code;
      number = 2.0;
    }
  }
}

TEST(EvidenceSentences, PutTheUsualBesideWhatWasSeen) {
  EXPECT_THAT(evidence_sentence(fact_of(Evidence::leader_grey, {1.204, 2.0})),
              AllOf(HasSubstr("Leader: 1.20"), HasSubstr("2.00 or more is usual")));
  EXPECT_THAT(evidence_sentence(fact_of(Evidence::base_fog_excess, {0.613, 0.3})),
              AllOf(HasSubstr("0.61"), HasSubstr("usual is about 0.30")));
  EXPECT_THAT(evidence_sentence(fact_of(Evidence::highlight, {0.78, 1.0, 1.05, 1.35})),
              HasSubstr("0.78 above clear film in the one frame; usual is 1.05 to 1.35"));
}

TEST(EvidenceSentences, NameUnfitScansAndWhatMakesThemSo) {
  Finding finding = finding_of(Cause::unfit_scan, 0.9);
  finding.unfit_scans = {{"a.tif", Caution{Severity::unfit, fact_of(CautionKind::inverted)}},
                         {"b.tif", std::nullopt}};
  finding.evidence = {fact_of(Evidence::no_edge_print)};
  EXPECT_THAT(evidence_sentences(finding),
              ElementsAre("No edge print was found.",
                          AllOf(StartsWith("a.tif: "), HasSubstr("turned into a positive")),
                          "b.tif: no density could be read"));
}

}  // namespace
}  // namespace fogline
