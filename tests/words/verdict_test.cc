#include "words/verdict.h"

#include "record/invented_curve.h"
#include "record/invented_judgement.h"

#include <utility>

#include <gmock/gmock.h>
#include <gtest/gtest.h>

namespace fogline {
namespace {

using testing::EndsWith;
using testing::HasSubstr;
using testing::Not;
using testing::StartsWith;

std::string reading_of(RollMeasurement roll, DensityUnits units = DensityUnits::density) {
  return verdict_of(invented::record(std::move(roll)), units).reading;
}

std::string trust_of(RollMeasurement roll) {
  return verdict_of(invented::record(std::move(roll)), DensityUnits::density).trust;
}

/// A roll of scans of these fitnesses.
RollMeasurement roll_of(const std::vector<Fitness>& fitnesses) {
  RollMeasurement roll;
  for (const Fitness fitness : fitnesses) {
    roll.scans.push_back(invented::scan("strip.tif"));
    roll.scans.back().fitness = fitness;
  }
  return roll;
}

TEST(Verdict, CountsFramesAndNamesTheFilm) {
  EXPECT_THAT(reading_of(invented::roll()), StartsWith("Three frames on 135 film: "));
  RollMeasurement roll = invented::roll();
  roll.scans.front().frames.resize(1);
  EXPECT_THAT(reading_of(roll), StartsWith("One frame on 135 film: "));
  roll.scans.front().strips.front().format = FilmFormat::unknown;
  EXPECT_THAT(reading_of(roll), StartsWith("One frame on film of unknown format: "));
}

TEST(Verdict, NamesNoKindOfFilmWhereStripsDiffer) {
  RollMeasurement roll = invented::roll();
  roll.scans.push_back(invented::scan("wide.tif"));
  roll.scans.back().strips.front().format = FilmFormat::f120;
  EXPECT_THAT(reading_of(roll), StartsWith("Six frames on film: "));
}

TEST(Verdict, CountsNoFrameTwiceAndNoneOfATarget) {
  RollMeasurement roll = invented::roll();
  roll.scans.front().frames[0].repeats_frame = 3;
  roll.scans.front().frames[1].target = true;
  EXPECT_EQ(counted_frames(roll).size(), 1U);
  EXPECT_EQ(counted_frames(roll).front()->number, 3);
  roll.scans.front().frames[2].tone.shadow = Unknown::frame_hidden;
  EXPECT_EQ(counted_frames(roll).size(), 1U);
  roll.scans.front().frames[2].tone.middle = Unknown::frame_hidden;
  EXPECT_TRUE(counted_frames(roll).empty());
}

TEST(Verdict, SpansFromTheThinnestShadowToTheDensestHighlight) {
  const std::string said = reading_of(invented::roll());
  EXPECT_THAT(said, HasSubstr("base plus fog 0.28 ± 0.03, picture densities 0.35 to 1.42"));
  EXPECT_THAT(said, HasSubstr("(median range 0.98 ± 0.12)"));
  EXPECT_THAT(said, EndsWith("paper of about log range 0.98."));
}

TEST(Verdict, GivesStopsButPaperInLogExposure) {
  const std::string said = reading_of(invented::roll(), DensityUnits::stops);
  EXPECT_THAT(said, HasSubstr("base plus fog 0.94 ± 0.10 stops"));
  EXPECT_THAT(said, HasSubstr("1.16 to 4.7 stops"));
  EXPECT_THAT(said, EndsWith("log range 0.98."));
}

TEST(Verdict, SaysFromWhereDensitiesCount) {
  RollMeasurement roll = invented::roll();
  EXPECT_THAT(reading_of(roll), Not(HasSubstr("above clear film")));
  roll.scans.front().densities_above = DensitiesAbove::base;
  roll.scans.front().base_fog = Unknown::no_zero_for_base;
  EXPECT_THAT(reading_of(roll), HasSubstr("base plus fog can't be told, picture densities above "
                                          "clear film 0.35 to 1.42"));
}

// No paper can be named for film that is denser than the scan could see.
TEST(Verdict, NamesNoPaperForALowerBound) {
  RollMeasurement roll = invented::roll();
  roll.medians->range->at_least = true;
  EXPECT_THAT(reading_of(roll), HasSubstr("(median range at least 0.98)"));
  EXPECT_THAT(reading_of(roll), Not(HasSubstr("paper")));
  roll.medians = Unknown::no_frame_read;
  EXPECT_THAT(reading_of(roll), Not(HasSubstr("paper")));
}

TEST(Verdict, SaysHowLittleThereIsWithoutFrames) {
  EXPECT_EQ(reading_of(RollMeasurement{}), "No scan could be read.");
  EXPECT_EQ(reading_of(invented::unfit_roll()), "No film was found.");
  RollMeasurement roll = invented::roll();
  roll.scans.front().frames.clear();
  EXPECT_THAT(reading_of(roll), StartsWith("No frame was found on the 135 film; base plus fog is "
                                           "0.28"));
  roll.scans.front().base_fog = Unknown::no_densities;
  EXPECT_EQ(reading_of(roll), "On the 135 film no density could be read.");
}

TEST(Verdict, CountsKnownExposuresOfATarget) {
  RollMeasurement roll = invented::bracket_roll();
  EXPECT_THAT(reading_of(roll), StartsWith("Eleven known exposures on 135 film; base plus fog is"));
}

TEST(Verdict, TakesTheMiddleBasePlusFog) {
  RollMeasurement roll =
      roll_of({Fitness::indicative, Fitness::indicative, Fitness::indicative, Fitness::indicative});
  roll.scans[0].base_fog->visual.value = 0.9;
  roll.scans[1].base_fog->visual.value = 0.2;
  roll.scans[2].base_fog->visual.value = 0.3;
  roll.scans[3].base_fog = Unknown::no_zero_for_base;
  EXPECT_EQ(roll_base_fog(roll)->value, 0.3);
  EXPECT_FALSE(roll_base_fog(RollMeasurement{}).has_value());
}

TEST(Verdict, TrustsARollAsItsWeakestScan) {
  EXPECT_EQ(trust_of(RollMeasurement{}), "");
  EXPECT_THAT(trust_of(roll_of({Fitness::measured, Fitness::measured})), StartsWith("Measured: "));
  EXPECT_THAT(trust_of(roll_of({Fitness::measured, Fitness::relative, Fitness::comparable})),
              StartsWith("Of three scans, one is weakest. Relative: "));
  EXPECT_THAT(trust_of(roll_of({Fitness::marks_only, Fitness::measured, Fitness::marks_only})),
              StartsWith("Of three scans, two are weakest. Good for looking at marks only"));
}

TEST(Verdict, SaysWhatMakesAScanUnfit) {
  RollMeasurement roll = roll_of({Fitness::unfit});
  roll.scans.front().cautions = {{Severity::caution, fact_of(CautionKind::eight_bit)},
                                 {Severity::unfit, fact_of(CautionKind::inverted)},
                                 {Severity::unfit, fact_of(CautionKind::no_film)}};
  EXPECT_THAT(trust_of(roll), HasSubstr("turned into a positive"));
  EXPECT_THAT(trust_of(roll), Not(HasSubstr("Eight bits")));
  EXPECT_THAT(trust_of(roll), Not(HasSubstr("No film")));
  roll.scans.front().fitness = Fitness::indicative;
  EXPECT_THAT(trust_of(roll), Not(HasSubstr("turned into a positive")));
}

TEST(Verdict, LeavesAlsoEmptyWhereNothingElseWasSeen) {
  EXPECT_EQ(verdict_of(invented::normal_record(), DensityUnits::density).also, "");
  EXPECT_THAT(verdict_of(invented::short_record(), DensityUnits::density).also,
              StartsWith("Also seen: dye left in the film (97 %), drying marks (93 %)"));
}

}  // namespace
}  // namespace fogline
