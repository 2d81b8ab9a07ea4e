#include "words/roll_numbers.h"

#include "record/invented_reports.h"

#include <algorithm>

#include <gmock/gmock.h>
#include <gtest/gtest.h>

namespace fogline {
namespace {

using testing::ElementsAre;
using testing::HasSubstr;
using testing::IsEmpty;
using testing::IsSupersetOf;
using testing::Not;

std::vector<std::string> names_of(const JudgedRoll& roll) {
  std::vector<std::string> names;
  for (const RollNumber& number : roll_numbers(roll, DensityUnits::density)) {
    names.push_back(number.name);
  }
  return names;
}

/// The number of that name; all empty where the roll has none.
RollNumber number_of(const JudgedRoll& roll, const std::string& name,
                     DensityUnits units = DensityUnits::density) {
  const auto numbers = roll_numbers(roll, units);
  const auto found = std::find_if(numbers.begin(), numbers.end(),
                                  [&](const RollNumber& number) { return number.name == name; });
  return found == numbers.end() ? RollNumber{} : *found;
}

TEST(RollNumbers, AreNoneOfNothing) {
  EXPECT_THAT(roll_numbers(invented::record(RollMeasurement{}), DensityUnits::density), IsEmpty());
  EXPECT_THAT(roll_numbers(invented::record(invented::unfit_roll()), DensityUnits::density),
              IsEmpty());
}

TEST(RollNumbers, StandWithTheWeightiestFirst) {
  EXPECT_THAT(names_of(invented::record(invented::roll())),
              ElementsAre("base plus fog", "shadow", "middle", "highlight", "range"));
  EXPECT_THAT(names_of(invented::short_record()),
              ElementsAre("light", "base plus fog", "tint", "shadow", "middle", "highlight",
                          "range", "marks"));
}

// Each number once: contrast and light that the verdict tells aren't told again.
TEST(RollNumbers, LeaveOutWhatTheVerdictHolds) {
  RollRecord record = invented::short_record();
  EXPECT_EQ(number_of(record, "contrast index").value, "");
  record = invented::normal_record();
  const RollNumber light = number_of(record, "light");
  EXPECT_EQ(light.value, "0.1 ± 0.7 stops");
  EXPECT_THAT(light.note, HasSubstr("more is plus"));
  record = invented::undecided_record();
  const RollNumber contrast = number_of(record, "contrast index");
  EXPECT_EQ(contrast.value, "0.48 ± 0.16");
  EXPECT_EQ(contrast.note, "aim 0.58 ± 0.05");
}

TEST(RollNumbers, SayWhereBasePlusFogWasRead) {
  RollRecord record = invented::record(invented::roll());
  record.measurement.scans.front().base_fog->source = BaseFogSource::unexposed_frame;
  EXPECT_EQ(number_of(record, "base plus fog").note, "read in an unexposed frame");
  record.measurement.scans.push_back(record.measurement.scans.front());
  EXPECT_EQ(number_of(record, "base plus fog").note, "the middle one of the scans");
  for (ScanMeasurement& scan : record.measurement.scans) {
    scan.base_fog = Unknown::no_zero_for_base;
  }
  EXPECT_EQ(number_of(record, "base plus fog").value, "");
}

TEST(RollNumbers, CountTheFramesOfAMedian) {
  RollRecord record = invented::record(invented::roll());
  EXPECT_EQ(number_of(record, "shadow").note,
            "median of 3 frames, 0.10 ± 0.02 above base plus fog");
  EXPECT_EQ(number_of(record, "middle").note, "0.43 ± 0.04 above base plus fog");
  record.measurement.scans.front().frames.resize(1);
  EXPECT_EQ(number_of(record, "shadow").note, "0.10 ± 0.02 above base plus fog");
  record.measurement.medians->net_shadow = Unknown::scan_silent;
  EXPECT_EQ(number_of(record, "shadow").note, "");
  record.measurement.medians->shadow = Unknown::scan_silent;
  EXPECT_EQ(number_of(record, "shadow").name, "");
}

TEST(RollNumbers, TellStopsWhereAskedButPaperNever) {
  const RollRecord record = invented::record(invented::roll());
  EXPECT_THAT(number_of(record, "middle", DensityUnits::stops).value, HasSubstr(" stops"));
  EXPECT_EQ(number_of(record, "range", DensityUnits::stops).note,
            "asks for paper of about log range 0.98");
}

TEST(RollNumbers, NameNoPaperForALowerBound) {
  RollRecord record = invented::record(invented::roll());
  record.measurement.medians->range->at_least = true;
  EXPECT_EQ(number_of(record, "range").value, "at least 0.98");
  EXPECT_EQ(number_of(record, "range").note, "");
}

TEST(RollNumbers, TellTheStrongestTintOfTheFirstScanThatHasOne) {
  RollRecord record = invented::record(invented::roll());
  record.measurement.scans.push_back(invented::scan("second.tif"));
  record.measurement.scans.back().tint = invented::dye();
  EXPECT_EQ(number_of(record, "tint").value, "0.08 ± 0.02");
  EXPECT_EQ(number_of(record, "tint").note, "dye left");
}

TEST(RollNumbers, CountMarksOfAllScans) {
  RollRecord record = invented::short_record();
  EXPECT_EQ(number_of(record, "marks").value, "5");
  record.measurement.scans.push_back(record.measurement.scans.front());
  EXPECT_EQ(number_of(record, "marks").value, "10");
  EXPECT_THAT(number_of(record, "marks").note, HasSubstr("2 pieces of dust"));
}

class OfACurve : public testing::Test {
 protected:
  static RollRecord bracket() {
    static const RollRecord record = invented::bracket_record();
    return record;
  }
};

TEST_F(OfACurve, TellsExposuresSlopeSpeedAndPaper) {
  EXPECT_THAT(names_of(bracket()), IsSupersetOf({"exposures", "gamma", "exposure index", "paper"}));
  EXPECT_EQ(number_of(bracket(), "exposures").value, "11");
  EXPECT_THAT(number_of(bracket(), "exposure index").note, HasSubstr("; 400 was set"));
  EXPECT_THAT(number_of(bracket(), "paper").value, testing::MatchesRegex("R [0-9]+0"));
  EXPECT_THAT(number_of(bracket(), "paper").note, HasSubstr("by condenser"));
}

TEST_F(OfACurve, InventsNoIndexThatWasSet) {
  RollRecord record = bracket();
  record.measurement.sensitometry->scale.exposure_index.reset();
  EXPECT_EQ(number_of(record, "exposure index").note, "Zone I at the speed point");
}

TEST_F(OfACurve, LeavesOutWhatItDoesNotTell) {
  RollRecord record = bracket();
  Sensitometry& read = *record.measurement.sensitometry;
  read.readings.gamma = Unknown::draws_too_short;
  read.placement.exposure_index = Unknown::curve_not_metered;
  record.judgement.curve->diffusion_range = Unknown::curve_too_short;
  const auto names = names_of(record);
  for (const char* name : {"gamma", "exposure index", "paper"}) {
    EXPECT_THAT(names, Not(testing::Contains(name)));
  }
}

}  // namespace
}  // namespace fogline
