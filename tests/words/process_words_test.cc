#include "one_of_each.h"
#include "words/advice_words.h"
#include "words/aim_words.h"
#include "words/bath_words.h"
#include "words/cause_words.h"
#include "words/evidence_words.h"
#include "words/paper_words.h"
#include "words/rescue_words.h"
#include "words/safety.h"
#include "words/unknown_words.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

namespace fogline {
namespace {

using testing::ElementsAre;
using testing::HasSubstr;
using testing::Not;

TEST(ProcessWords, EveryMemberHasACodeOfItsOwn) {
  expect_codes<Cause>();
  expect_codes<CauseStatement>();
  expect_codes<Evidence>();
  expect_codes<FurtherMeasurement>();
  expect_codes<DevelopmentReason>();
  expect_codes<ExposureReason>();
  expect_codes<BathReason>();
  expect_codes<RescueStep>();
  expect_codes<AimSource>();
  expect_codes<Unknown>();
}

TEST(CauseWords, SayEveryStatement) {
  for (const Fact<CauseStatement>& statement : one_of_each<CauseStatement>()) {
    Finding finding = finding_of(Cause::normal, 0.6);
    finding.statements = {statement};
    expect_sentence(finding_message(finding));
  }
}

TEST(CauseWords, JoinWhatAFindingStates) {
  Finding finding = finding_of(Cause::under_exposed, 0.72);
  finding.statements = {fact_of(CauseStatement::light_short, {1.24, 0.46}),
                        fact_of(CauseStatement::development_long, {0.681, 0.052, 0.58})};
  EXPECT_EQ(finding_sentence(finding),
            "Light was short by about 1.2 ± 0.5 stops. Development was long: contrast index about "
            "0.68 ± 0.05, where 0.58 is the aim. (72 %)");
  finding.statements = {fact_of(CauseStatement::perhaps_too_little_light, {0.414})};
  EXPECT_EQ(finding_message(finding), "Can't tell for sure: perhaps too little light, 41 %.");
}

TEST(CauseWords, TellEachCauseInItsPlace) {
  EXPECT_EQ(place_of(Cause::weak_developer), FindingPlace::light_or_time);
  EXPECT_EQ(place_of(Cause::fogged), FindingPlace::clear_film);
  EXPECT_EQ(place_of(Cause::light_struck), FindingPlace::marks);
  EXPECT_EQ(place_of(Cause::unfit_scan), FindingPlace::scan);
  EXPECT_EQ(cause_words(Cause::dye_left), "dye left in the film");
  EXPECT_EQ(cause_words(Cause::normal), "");
}

TEST(EvidenceWords, SayEverySign) {
  for (const Fact<Evidence>& seen : one_of_each<Evidence>()) {
    expect_sentence(evidence_sentence(seen));
  }
  for (const Fact<FurtherMeasurement>& measurement : one_of_each<FurtherMeasurement>()) {
    expect_sentence(std::string(measurement_sentence(measurement.kind)));
  }
}

TEST(EvidenceWords, QuoteNumbersBesideWhatIsUsual) {
  EXPECT_EQ(evidence_sentence(fact_of(Evidence::shadow, {0.124, 6.0, 0.18, 0.38})),
            "Shadows: 0.12 above clear film in the median of 6 frames; usual is 0.18 to 0.38.");
  EXPECT_EQ(evidence_sentence(fact_of(Evidence::highlight_at_least, {1.9, 1.0, 1.07, 1.37})),
            "Highlights: at least 1.90 above clear film in the one frame; usual is 1.07 to 1.37.");
  EXPECT_EQ(evidence_sentence(fact_of(Evidence::edge_print, {0.95, 0.3})),
            "Edge print: 0.95 above clear film; how dense this film's should be is known to 30 % "
            "only, so it weighs accordingly.");
  EXPECT_EQ(evidence_sentence(fact_of(Evidence::drying_marks_strongest, {3.0, 0.118})),
            "Seen: drying marks, 3; the strongest 0.12 off its surround.");
}

TEST(EvidenceWords, OfAFindingEndWithWhatWouldTellMost) {
  Finding finding = finding_of(Cause::unfit_scan, 0.95);
  finding.unfit_scans = {{"a.tif", std::nullopt}};
  finding.would_tell_most = FurtherMeasurement::scan_leader;
  EXPECT_THAT(evidence_sentences(finding),
              ElementsAre("a.tif: no density could be read",
                          "Scan the fogged leader too: a grey leader means little development."));
}

TEST(AimWords, TellWhereTheAimComesFrom) {
  for (const FactRow<AimSource>& row : fact_rows<AimSource>()) {
    EXPECT_THAT(aim_source_words({0.58, 0.05, row.kind, {}}), HasSubstr("the "));
  }
  EXPECT_EQ(aim_source_words({0.45, 0.05, AimSource::condenser, {}}),
            "the usual aim for condenser light");
  EXPECT_EQ(aim_source_words({0.58, 0.05, AimSource::diffusion, "harbour"}),
            "the usual aim for diffusion light, because the contrast of \"harbour\" isn't known "
            "here");
}

TEST(AdviceWords, SayEveryReason) {
  for (const Fact<DevelopmentReason>& reason : one_of_each<DevelopmentReason>()) {
    DevelopmentAdvice advice;
    advice.reasons = {reason};
    ASSERT_EQ(development_sentences(advice, {}).size(), 1U);
    expect_sentence(development_sentences(advice, {}).front());
  }
  for (const Fact<ExposureReason>& reason : one_of_each<ExposureReason>()) {
    ExposureAdvice advice;
    advice.reasons = {reason};
    ASSERT_EQ(exposure_sentences(advice).size(), 1U);
    expect_sentence(exposure_sentences(advice).front());
  }
}

TEST(AdviceWords, EndWithWhatStandsBeside) {
  DevelopmentAdvice advice;
  advice.reasons = {fact_of(DevelopmentReason::contrast_seen, {0.456, 0.402, 0.51, 0.58}),
                    fact_of(DevelopmentReason::too_little_known)};
  advice.would_tell_most = FurtherMeasurement::scan_more_strips;
  EXPECT_THAT(
      development_sentences(advice, {}),
      ElementsAre("This roll's contrast index is about 0.46 (95 in 100: 0.40 to 0.51), the aim "
                  "0.58, the usual aim for diffusion light.",
                  "Too little is known of this roll's contrast: no other time lands near the aim "
                  "much more often than yours. Keep your time. Scan the other strips of this roll: "
                  "more frames even out the subjects."));
}

TEST(AdviceWords, SayHowATimeLands) {
  DevelopmentAdvice advice;
  advice.reasons = {fact_of(DevelopmentReason::time_lands, {570.0, 0.05, 0.623, 0.041}),
                    fact_of(DevelopmentReason::less_time_lands, {0.2, 0.05, 0.5, 0.1}),
                    fact_of(DevelopmentReason::time_lands_at, {435.0, 20.0, 0.05, 0.58})};
  EXPECT_THAT(
      development_sentences(advice, {}),
      ElementsAre(
          "9:30 lands within 0.05 of the aim with a chance of 62 %; your old time with 4 %.",
          "20 % less time lands within 0.05 of the aim with a chance of 50 %; your old time "
          "with 10 %.",
          "7:15 at 20 °C lands within 0.05 of the aim with a chance of 58 %."));
}

TEST(AdviceWords, SayWhyNothingIsAdvised) {
  ExposureAdvice exposure;
  EXPECT_TRUE(exposure_sentences(exposure).empty());
  exposure.change_stops = Unknown::nothing_metered;
  EXPECT_THAT(exposure_sentences(exposure),
              ElementsAre("Nothing on this roll was metered; only development was judged."));
  exposure.change_stops = Unknown::curve_too_short;
  EXPECT_THAT(exposure_sentences(exposure),
              ElementsAre("The speed point can't be read: the curve doesn't reach far enough."));
  DevelopmentAdvice development;
  EXPECT_TRUE(development_sentences(development, {}).empty());
  development.predicted_contrast_index = Unknown::contrast_untold;
  EXPECT_EQ(development_sentences(development, {}).size(), 1U);
}

TEST(BathWords, SayEveryReason) {
  BathAdvice advice;
  advice.fills = {5, 10, 20};
  for (const Fact<BathReason>& reason : one_of_each<BathReason>()) {
    expect_sentence(bath_sentence(reason, advice));
  }
  EXPECT_THAT(bath_sentence(fact_of(BathReason::wash_fills, {300.0}), advice),
              testing::StartsWith("Fills of fresh water with 5, 10 and 20 inversions; let the last "
                                  "stand for 5:00, since"));
  EXPECT_EQ(bath_sentence(fact_of(BathReason::clears_slowly, {2.083, 2.0}), advice),
            "It clears 2.1 times slower than fresh: spent at 2 times (NAVEDTRA 14209).");
}

TEST(RescueWords, SayEveryStepInFullAndInShort) {
  for (const Fact<RescueStep>& step : one_of_each<RescueStep>()) {
    expect_sentence(step_sentence(step));
    expect_sentence(short_step_sentence(step));
    // What is done stands at the head of the full form; only its last stop may differ.
    const std::string what = short_step_sentence(step);
    EXPECT_THAT(step_sentence(step), testing::StartsWith(what.substr(0, what.size() - 1)));
  }
  EXPECT_EQ(short_step_sentence(fact_of(RescueStep::wash_out_dye)),
            "For the dye: three more fills of water at 20 to 24 °C, standing 5 minutes each.");
}

TEST(RescueWords, LeaveNoBathWithoutItsCaution) {
  EXPECT_EQ(step_sentence(fact_of(RescueStep::handle_with_care)), bath_caution);
  for (const char* part : {"gloves", "not down the drain", "safety sheet"}) {
    EXPECT_THAT(std::string(bath_caution), HasSubstr(part));
  }
  // A step whose words speak of a bath is known to use one.
  for (const Fact<RescueStep>& step : one_of_each<RescueStep>()) {
    if (!bath_of(step.kind) && !is_caution(step.kind)) {
      EXPECT_THAT(step_sentence(step), Not(HasSubstr("fresh fixer")));
      EXPECT_THAT(step_sentence(step), Not(HasSubstr("to the litre")));
    }
  }
}

TEST(Safety, KnowsABathByItsFacts) {
  EXPECT_FALSE(names_a_bath(std::nullopt));
  Advice advice;
  advice.stop.reasons = advice.fix.reasons = {fact_of(BathReason::own_process)};
  advice.this_roll = {fact_of(RescueStep::nothing_chromogenic)};
  EXPECT_FALSE(names_a_bath(advice));
  advice.this_roll = {fact_of(RescueStep::wash_out_dye)};
  EXPECT_TRUE(names_a_bath(advice));
  advice.this_roll.clear();
  advice.fix.reasons = {fact_of(BathReason::measure_clearing)};
  EXPECT_TRUE(names_a_bath(advice));
}

TEST(PaperWords, NameTheGradeThatFitsTheRange) {
  EXPECT_EQ(printing_sentence(0.71, ""), "Print on very hard paper, ISO range about R 70.");
  EXPECT_EQ(printing_sentence(0.87, ", counted for condenser light"),
            "Print on hard paper, ISO range about R 90, counted for condenser light.");
  EXPECT_THAT(printing_sentence(1.10, ""), HasSubstr("normal paper"));
  EXPECT_THAT(printing_sentence(1.30, ""), HasSubstr(" soft paper"));
  EXPECT_THAT(printing_sentence(1.60, ""), HasSubstr("very soft paper"));
}

// Reasons of a curve, a target or a profile go on after a colon, so they begin small and end
// without a stop; all others are sentences.
TEST(UnknownWords, SayEveryReason) {
  for (const Fact<Unknown>& why : one_of_each<Unknown>()) {
    const std::string reason = unknown_sentence(why);
    ASSERT_FALSE(reason.empty());
    const bool sentence = reason.back() == '.';
    EXPECT_EQ(sentence, reason.front() >= 'A' && reason.front() <= 'Z') << reason;
    expect_sentence(sentence ? reason : reason + ".");
  }
  EXPECT_EQ(reason_sentence({}), "");
  EXPECT_EQ(reason_sentence({Unknown::not_told, {}, {}, "as told before"}), "as told before");
}

}  // namespace
}  // namespace fogline
