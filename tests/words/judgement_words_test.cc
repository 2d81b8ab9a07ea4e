#include "words/judgement_words.h"

#include "record/invented_judgement.h"

#include <utility>

#include <gmock/gmock.h>
#include <gtest/gtest.h>

namespace fogline {
namespace {

using testing::EndsWith;
using testing::HasSubstr;
using testing::IsEmpty;
using testing::Not;
using testing::StartsWith;

using invented::density;

/// What is said of a roll so weighed.
std::string said_of(const CauseProbabilities& causes, const Quantity& stops,
                    const Quantity& contrast) {
  RollRecord record = invented::short_record();
  record.judgement.light_or_time = invented::weighed(causes, stops, contrast);
  return judgement_sentence(record);
}

/// The same of a roll that advice leaves alone.
std::string said_of_a_roll_left_alone(const CauseProbabilities& causes, const Quantity& stops,
                                      const Quantity& contrast) {
  RollRecord record = invented::normal_record();
  record.judgement.light_or_time = invented::weighed(causes, stops, contrast);
  return judgement_sentence(record);
}

constexpr CauseProbabilities all_right{0.83, 0.05, 0.06, 0.03, 0.03};

TEST(CauseChances, StandInOneOrder) {
  const auto chances = cause_chances({0.1, 0.2, 0.3, 0.15, 0.25});
  EXPECT_EQ(chances[0].name, "all right");
  EXPECT_EQ(chances[1].name, "light short");
  EXPECT_EQ(chances[1].probability, 0.2);
  EXPECT_EQ(chances[2].probability, 0.3);
  EXPECT_EQ(chances[3].name, "development short");
  EXPECT_EQ(chances[3].probability, 0.15);
  EXPECT_EQ(chances[4].probability, 0.25);
}

// A chance is never said as none or as certain.
TEST(ChanceText, NeverSaysNoneOrAll) {
  for (const double probability : {0.0, 0.001, 0.005, 0.0051, 0.5, 0.9949, 0.995, 1.0}) {
    const std::string text = chance_text(probability);
    EXPECT_THAT(text, Not(StartsWith("0 "))) << probability;
    EXPECT_THAT(text, Not(StartsWith("100 "))) << probability;
    EXPECT_THAT(text, EndsWith(" %")) << probability;
  }
  EXPECT_EQ(chance_text(0.0051), "1 %");
  EXPECT_EQ(chance_text(0.9949), "99 %");
  EXPECT_EQ(chance_text(0.995), "over 99 %");
}

TEST(JudgementSentence, GivesTheNextHalfStopThatHoldsLight) {
  const auto within = [](double stops, double u95) {
    return said_of(all_right, density(stops, u95), density(0.57, 0.07));
  };
  EXPECT_THAT(within(0.1, 0.3), EndsWith("light within half a stop."));
  EXPECT_THAT(within(-0.3, 0.6), EndsWith("light within one stop."));
  EXPECT_THAT(within(0.5, 1.0), EndsWith("light within a stop and a half."));
  EXPECT_THAT(within(0.5, 1.1), EndsWith("light within two stops."));
  EXPECT_THAT(within(0.5, 1.6), EndsWith("light within 2.5 stops."));
  EXPECT_THAT(within(0.5, 2.2), EndsWith("light within 3 stops."));
  EXPECT_THAT(within(0.0, 0.0), EndsWith("light within half a stop."));
}

TEST(JudgementSentence, SaysThatLightWasNotJudged) {
  RollRecord record = invented::normal_record();
  record.judgement.light_or_time.exposure_stops = Unknown::nothing_metered;
  EXPECT_THAT(judgement_sentence(record), StartsWith("Development was right: contrast about 0.57"));
  EXPECT_THAT(judgement_sentence(record), EndsWith("Light wasn't judged."));
  record.judgement.light_or_time.causes = CauseProbabilities{0.1, 0.0, 0.0, 0.0, 0.9};
  record.judgement.light_or_time.contrast_index = density(0.8, 0.05);
  EXPECT_THAT(judgement_sentence(record), StartsWith("Development was long: "));
  EXPECT_THAT(judgement_sentence(record), EndsWith("Light wasn't judged."));
}

TEST(JudgementSentence, DoubtsASecondFaultOfDevelopment) {
  EXPECT_EQ(said_of({0.05, 0.0, 0.9, 0.05, 0.0}, density(1.3, 0.4), density(0.45, 0.06)),
            "Light was plentiful by about 1.3 ± 0.4 stops. Development may have been short: "
            "contrast about 0.45 ± 0.06, aimed at 0.58.");
}

TEST(JudgementSentence, CallsLightRightWithinItsLatitude) {
  EXPECT_THAT(said_of({0.1, 0.0, 0.0, 0.9, 0.0}, density(0.6, 0.3), density(0.4, 0.05)),
              EndsWith("Light was right within one stop."));
  EXPECT_THAT(said_of({0.1, 0.0, 0.0, 0.9, 0.0}, density(-0.7, 0.3), density(0.4, 0.05)),
              EndsWith("Light may have been short by about 0.7 ± 0.3 stops."));
}

TEST(JudgementSentence, SaysTheLikelierCausesFirstAndFewOfThem) {
  const std::string said =
      said_of({0.22, 0.36, 0.09, 0.23, 0.10}, density(-0.9, 1.1), density(0.45, 0.16));
  EXPECT_EQ(said,
            "This scan can't tell light from time: light short 36 %, development short 23 %, all "
            "right 22 %.");
  EXPECT_THAT(said_of({0.46, 0.05, 0.05, 0.4, 0.04}, density(-0.9, 1.1), density(0.45, 0.16)),
              EndsWith("doesn't tell for sure: all right 46 %, development short 40 %."));
}

TEST(JudgementSentence, PutsTheBestGuessFirstWhereNothingIsToBeChanged) {
  constexpr CauseProbabilities open{0.4, 0.2, 0.1, 0.2, 0.1};
  const Quantity right = density(0.57, 0.2);
  EXPECT_THAT(said_of_a_roll_left_alone(open, density(0.1, 1.2), right),
              StartsWith("Nothing stands out: contrast about 0.6 ± 0.2, aimed at 0.58, light right "
                         "within a stop and a half. More closely this scan can't tell: all right "
                         "40 %"));
  // Not where light or contrast lie off, nor where something is to be changed.
  EXPECT_THAT(said_of_a_roll_left_alone(open, density(0.9, 1.2), right),
              StartsWith("This scan can't tell light from time: "));
  EXPECT_THAT(said_of_a_roll_left_alone(open, density(0.1, 1.2), density(0.64, 0.2)),
              StartsWith("This scan can't tell light from time: "));
  EXPECT_THAT(said_of(open, density(0.1, 1.2), right),
              StartsWith("This scan can't tell light from time: "));
}

TEST(JudgementSentence, SaysWhyNothingIsJudged) {
  RollRecord record = invented::record(RollMeasurement{});
  EXPECT_EQ(judgement_sentence(record), "No scan could be read.");
  record = invented::record(invented::roll());
  EXPECT_EQ(judgement_sentence(record), "Light and development can't be told from this scan.");
  record.judgement.light_or_time.causes = Unknown::no_picture;
  EXPECT_THAT(judgement_sentence(record),
              StartsWith("Light and development can't be told: no picture is in sight"));
}

TEST(JudgementSentence, TellsUndevelopedFilmOnlyWhereItIsLikelierThanNot) {
  RollRecord record = invented::record(invented::roll());
  const auto undeveloped = [](double sure) {
    return invented::finding(Cause::not_developed, sure, fact_of(CauseStatement::not_developed),
                             {});
  };
  record.judgement.findings = {undeveloped(0.5)};
  EXPECT_THAT(judgement_sentence(record), StartsWith("The film was not developed: "));
  record.judgement.findings = {undeveloped(0.49)};
  EXPECT_THAT(judgement_sentence(record), StartsWith("Light and development can't be told"));
}

RollRecord with_findings(const std::vector<std::pair<Cause, double>>& findings) {
  RollRecord record = invented::record(invented::roll());
  for (const auto& [cause, sure] : findings) {
    record.judgement.findings.push_back(finding_of(cause, sure));
  }
  return record;
}

TEST(AlsoSentence, SaysWhatIsLikelierThanNot) {
  EXPECT_EQ(also_sentence(with_findings({{Cause::scratched, 0.49}})), "");
  EXPECT_EQ(also_sentence(with_findings({{Cause::normal, 0.9}, {Cause::unfit_scan, 0.9}})), "");
  EXPECT_EQ(also_sentence(with_findings({{Cause::scratched, 0.9}, {Cause::dirty, 0.5}})),
            "Also seen: scratches (90 %), dust and fibres (50 %).");
}

TEST(AlsoSentence, SaysFourAtMost) {
  const std::string said = also_sentence(with_findings({{Cause::scratched, 0.99},
                                                        {Cause::dirty, 0.98},
                                                        {Cause::air_bells, 0.97},
                                                        {Cause::drying_marks, 0.96},
                                                        {Cause::light_struck, 0.95}}));
  EXPECT_THAT(said, HasSubstr("drying marks (96 %)."));
  EXPECT_THAT(said, Not(HasSubstr("stray light")));
}

TEST(AlsoSentence, DoubtsColourThatMayBeTheFilmsOwn) {
  RollRecord record = with_findings({{Cause::stained, 0.8}, {Cause::dirty, 0.7}});
  Tint& tint = record.measurement.scans.front().tint;
  tint = invented::dye();
  EXPECT_EQ(also_sentence(record), "Also seen: a stain (80 %), dust and fibres (70 %).");
  tint.may_be_stock = true;
  EXPECT_EQ(also_sentence(record),
            "Also seen: a stain (80 %, unless the film's base is so tinted), dust and fibres "
            "(70 %).");
}

TEST(Findings, AreToldInTheirPlaceInTheirOrder) {
  const RollRecord record = with_findings({{Cause::fogged, 0.9},
                                           {Cause::scratched, 0.8},
                                           {Cause::dye_left, 0.7},
                                           {Cause::air_bells, 0.6}});
  const auto marks = findings_at(record, FindingPlace::marks);
  ASSERT_EQ(marks.size(), 2U);
  EXPECT_EQ(marks[0]->cause, Cause::scratched);
  EXPECT_EQ(marks[1]->cause, Cause::air_bells);
  EXPECT_THAT(findings_at(record, FindingPlace::scan), IsEmpty());
  // Of clear film only fog is told here; tints have sentences of their own.
  EXPECT_EQ(fog_sentences(record).size(), 1U);
  EXPECT_THAT(fog_sentences(record).front(), EndsWith("(90 %)"));
}

}  // namespace
}  // namespace fogline
