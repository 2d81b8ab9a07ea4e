#include "words/curve_words.h"

#include "record/invented_reports.h"
#include "said.h"

#include <algorithm>
#include <set>

#include <gmock/gmock.h>
#include <gtest/gtest.h>

namespace fogline {
namespace {

using testing::Contains;
using testing::EndsWith;
using testing::HasSubstr;
using testing::IsEmpty;
using testing::Not;
using testing::StartsWith;

/// What is said of the invented bracket after a change; its curve is fitted once.
template <typename Change>
std::vector<std::string> curve_said_after(const Change& change) {
  static const RollRecord bracket = invented::bracket_record();
  RollRecord record = bracket;
  change(record, *record.measurement.sensitometry, *record.judgement.curve);
  return curve_sentences(record);
}

std::vector<std::string> said_of_bracket() {
  return curve_said_after([](RollRecord&, Sensitometry&, CurveJudgement&) {});
}

TEST(CurveSentences, BeginWithContrastAndGoOnToPaperAndScanning) {
  const auto sentences = said_of_bracket();
  ASSERT_EQ(sentences.size(), 5U);
  EXPECT_THAT(sentences[0], StartsWith("Development was normal: contrast index 0."));
  EXPECT_THAT(sentences[0], HasSubstr("aimed at 0.58"));
  EXPECT_THAT(sentences[1], HasSubstr("ISO 6"));
  EXPECT_THAT(sentences[2], StartsWith("With Zone I at the speed point"));
  EXPECT_THAT(sentences[3], HasSubstr("paper of ISO range R "));
  EXPECT_THAT(sentences[4], HasSubstr("Zone IX"));
  EXPECT_EQ(fault_of(sentences), "");
}

TEST(CurveSentences, SayWhichWayDevelopmentWent) {
  const auto zones = [](DevelopmentKind kind, double value) {
    return curve_said_after([&](RollRecord&, Sensitometry&, CurveJudgement& curve) {
      curve.development = kind;
      curve.zones = invented::density(value, 0.3);
    })[0];
  };
  EXPECT_THAT(zones(DevelopmentKind::expanded, 1.2), StartsWith("Development was expanded: "));
  EXPECT_THAT(zones(DevelopmentKind::expanded, 1.2), EndsWith("(N+1.2 ± 0.3 zones)."));
  EXPECT_THAT(zones(DevelopmentKind::contracted, -1.2), StartsWith("Development was contracted: "));
  EXPECT_THAT(zones(DevelopmentKind::contracted, -1.2), EndsWith("(N−1.2 ± 0.3 zones)."));
}

TEST(CurveSentences, SayContrastWithoutZones) {
  const auto sentence = curve_said_after([](RollRecord&, Sensitometry&, CurveJudgement& curve) {
    curve.zones = Unknown::no_curve_contrast;
  })[0];
  EXPECT_THAT(sentence, StartsWith("Contrast index 0."));
  EXPECT_THAT(sentence, Not(HasSubstr("Development")));
}

TEST(CurveSentences, TellAnIsoSpeedOnlyWhereTheTriangleIsMet) {
  const auto met = curve_said_after([](RollRecord&, Sensitometry& read, CurveJudgement&) {
    read.iso.triangle = TriangleState::met;
    read.iso.number = IsoSpeedNumber{400, 27};
  });
  EXPECT_THAT(met, Contains(StartsWith("The contrast condition of ISO 6 is met: ")));
  EXPECT_THAT(met, Contains(StartsWith("ISO speed 400/27°")));
  const auto not_met = curve_said_after([](RollRecord&, Sensitometry& read, CurveJudgement&) {
    read.iso.triangle = TriangleState::not_met;
  });
  EXPECT_THAT(not_met, Contains(EndsWith("no speed is an ISO speed.")));
  EXPECT_THAT(not_met, Not(Contains(StartsWith("ISO speed"))));
  EXPECT_THAT(curve_said_after([](RollRecord&, Sensitometry& read, CurveJudgement&) {
                read.iso.triangle = TriangleState::cant_tell;
              }),
              Contains(HasSubstr("is met can't be told: density gains")));
}

TEST(CurveSentences, QuoteTheIndexWithItsInterval) {
  const auto index = [](const Quantity& supported, std::optional<double> set, bool by_meter) {
    return curve_said_after([&](RollRecord&, Sensitometry& read, CurveJudgement&) {
      read.placement.exposure_index = supported;
      read.scale.exposure_index = set;
      read.placement.exposure_index_by_meter = by_meter
                                                   ? Known<Quantity>(invented::density(251.6, 20.0))
                                                   : Known<Quantity>(Unknown::draws_too_short);
    })[2];
  };
  Quantity skew = invented::density(320.4, 40.0);
  EXPECT_THAT(index(skew, 400.0, true),
              EndsWith("index 320 (280 to 360), where 400 was set; by the meter's constant 252."));
  skew.lower95 = 290.0;
  skew.upper95 = 390.0;
  EXPECT_THAT(index(skew, 400.0, false), EndsWith("index 320 (290 to 390), where 400 was set."));
  EXPECT_THAT(index(skew, {}, false), EndsWith("index 320 (290 to 390)."));
}

TEST(CurveSentences, SayWhyNoSpeedIsTold) {
  EXPECT_THAT(curve_said_after([](RollRecord&, Sensitometry& read, CurveJudgement&) {
                read.placement.exposure_index = Unknown::no_exposure_index;
              })[2],
              AllOf(StartsWith("No exposure index can be told: "), HasSubstr("roll card")));
  EXPECT_THAT(curve_said_after([](RollRecord&, Sensitometry& read, CurveJudgement&) {
                read.placement.exposure_index = Unknown::draws_too_short;
                read.readings.speed_point_log_h = Unknown::wedge_place_unsure;
              })[2],
              AllOf(StartsWith("The speed point can't be read: "), HasSubstr("printed wedge")));
}

// Reasons are clauses, sentences or untold, and the stop is never doubled or left alone.
TEST(CurveSentences, EndInOneStopWhateverTheReason) {
  for (const WhyUnknown& why :
       {WhyUnknown{}, fact_of(Unknown::curve_too_short), fact_of(Unknown::scan_silent),
        WhyUnknown{Unknown::not_told, {}, {}, "As told."}}) {
    const auto sentences =
        curve_said_after([&](RollRecord&, Sensitometry& read, CurveJudgement& curve) {
          read.readings.contrast_index = why;
          read.readings.triangle_gain = why;
          read.readings.speed_point_log_h = why;
          read.placement.exposure_index = why;
          curve.diffusion_range = why;
          curve.suits_scanning = why;
        });
    EXPECT_EQ(fault_of(sentences), "");
    for (const std::string& sentence : sentences) {
      EXPECT_THAT(sentence, HasSubstr("can't be "));
      EXPECT_TRUE(sentence.ends_with('.') && !sentence.ends_with("..")) << sentence;
      EXPECT_THAT(sentence, Not(HasSubstr(": ."))) << sentence;
      EXPECT_THAT(sentence, Not(HasSubstr(":."))) << sentence;
    }
  }
}

TEST(CurveSentences, SayWhetherScannersSeeThrough) {
  const auto scanning = [](bool suits) {
    return curve_said_after([&](RollRecord&, Sensitometry&, CurveJudgement& curve) {
      curve.suits_scanning = suits;
      curve.densest = invented::density(2.13, 0.06);
    })[4];
  };
  EXPECT_THAT(scanning(true), StartsWith("It suits scanning: Zone IX lies 2.13 ± 0.06 above"));
  EXPECT_THAT(scanning(false), StartsWith("It is dense for scanning: Zone IX lies 2.13"));
}

TEST(CurveSentences, PutCautionsAfterContrastAndNameStepsLeftOut) {
  const auto sentences =
      curve_said_after([](RollRecord& record, Sensitometry& read, CurveJudgement&) {
        record.measurement.target_cautions = {
            {Severity::caution, fact_of(CautionKind::wedge_place_doubtful)}};
        read.curve.steps[3].left_out = fact_of(Unknown::step_off_curve);
      });
  EXPECT_THAT(sentences[0], StartsWith("Development was"));
  EXPECT_THAT(sentences[1], StartsWith("Which step of the printed wedge"));
  EXPECT_EQ(sentences.back(), "Left out of the curve: frame 4. It doesn't fit the other steps.");
}

TEST(CurveSentences, LeaveCautionsAloneWithoutACurve) {
  RollRecord record = invented::record(invented::roll());
  EXPECT_THAT(curve_sentences(record), IsEmpty());
  record.measurement.target_cautions = {
      {Severity::caution, fact_of(CautionKind::target_unread), fact_of(Unknown::no_rising_curve)}};
  ASSERT_EQ(curve_sentences(record).size(), 1U);
  EXPECT_THAT(curve_sentences(record).front(), StartsWith("No characteristic curve: "));
}

TEST(ContrastIndexReason, IsTheTargetsWhereTheTargetFailed) {
  RollMeasurement roll = invented::roll();
  EXPECT_THAT(contrast_index_reason(roll), HasSubstr("No target of known exposures"));
  roll.sensitometry = Unknown::no_printed_wedge;
  roll.contrast.contrast_index = Unknown::no_printed_wedge;
  EXPECT_THAT(contrast_index_reason(roll), StartsWith("No characteristic curve: no printed wedge"));
  roll.contrast.contrast_index = Unknown::few_frames_for_contrast;
  EXPECT_THAT(contrast_index_reason(roll), StartsWith("The pictures' own contrast can't be told"));
  roll.contrast.contrast_index = invented::density(0.6, 0.1);
  EXPECT_EQ(contrast_index_reason(roll), "");
}

TEST(StepRows, GiveNetDensityAndDistanceOrThatAStepIsLeftOut) {
  Sensitometry read;
  read.curve.base_fog = 0.2;
  read.curve.mean = {-1.0, 1.0, {0.0, 0.5, 1.0}};
  read.curve.steps = {{"frame 1", -0.004, 0.0, 0.7124, 0.0, {}},
                      {"frame 2", 0.5, 0.0, 0.1, 0.0, fact_of(Unknown::step_off_curve)}};
  const auto rows = step_rows(read);
  ASSERT_EQ(rows.size(), 2U);
  EXPECT_EQ(rows[0].log_h, "0.00");
  EXPECT_EQ(rows[0].net_density, "0.512");
  EXPECT_EQ(rows[0].off_curve, "0.014");
  EXPECT_EQ(rows[1].net_density, "−0.100");
  EXPECT_EQ(rows[1].off_curve, "left out");
}

TEST(ZoneNumerals, AreElevenOfTheirOwn) {
  std::set<std::string> numerals;
  for (int zone = first_zone; zone <= last_zone; ++zone) {
    numerals.insert(zone_numeral(zone));
  }
  EXPECT_EQ(numerals.size(), 11U);
  EXPECT_EQ(zone_numeral(metered_zone), "V");
  EXPECT_EQ(zone_numeral(9), "IX");
}

TEST(CurveNumberText, KeepsWholeNumbersWhole) {
  EXPECT_EQ(curve_number_text(Unknown::curve_too_short, 2), "–");
  EXPECT_EQ(curve_number_text(invented::density(0.583, 0.021), 2), "0.58 ± 0.02");
  EXPECT_EQ(curve_number_text(invented::density(251.6, 31.2), 0), "252 ± 31");
}

TEST(MissingNumbers, ShareTheirReason) {
  Sensitometry read;
  const Quantity there = invented::density(1.0, 0.1);
  for (CurveReading* reading :
       {&read.readings.contrast_index, &read.readings.gradient_130, &read.readings.gradient_150,
        &read.readings.gradient_180, &read.readings.gradient_zones, &read.readings.straight_length,
        &read.readings.speed_point_log_h, &read.readings.triangle_gain,
        &read.readings.fractional_gradient_log_h, &read.readings.delta_x_log_h,
        &read.readings.toe_length, &read.readings.toe_slope_part, &read.placement.density_range,
        &read.placement.exposure_index, &read.placement.exposure_index_by_meter,
        &read.useful_range_log_h}) {
    *reading = there;
  }
  read.readings.gamma = Unknown::draws_too_short;
  read.readings.shoulder_density = Unknown::straight_to_the_end;
  read.iso.speed = read.iso.effective_speed = Unknown::exposures_relative;
  const auto sentences = missing_numbers(read);
  ASSERT_EQ(sentences.size(), 3U);
  EXPECT_THAT(sentences, Contains(EndsWith(": ISO speed, effective speed by Delta-X.")));
  EXPECT_THAT(sentences, Contains(AllOf(StartsWith("Not told, since the straight line goes on"),
                                        EndsWith(": net density where the shoulder begins."))));
}

TEST(CurveMethod, WeighsTheFamiliesAndTellsTheDistance) {
  Sensitometry read;
  read.curve.family_probability = {0.6, 0.25, 0.1, 0.05};
  read.curve.residual_rms = 0.0124;
  const std::string said = curve_method(read);
  EXPECT_LT(said.find("60 %"), said.find("25 %"));
  EXPECT_LT(said.find("25 %"), said.find("10 %"));
  EXPECT_LT(said.find("10 %"), said.find("5 %)"));
  EXPECT_THAT(said, HasSubstr("within 0.012 of it"));
}

}  // namespace
}  // namespace fogline
