#include "words/calibration_words.h"

#include "said.h"

#include <cmath>

#include <gmock/gmock.h>
#include <gtest/gtest.h>

namespace fogline {
namespace {

using testing::Contains;
using testing::EndsWith;
using testing::HasSubstr;
using testing::Not;
using testing::StartsWith;

ScannerCalibration calibration_to(double limit) {
  ScannerCalibration calibration;
  calibration.doubt = {{0.0, 0.002, 0.0}, {4.0, 0.042, 0.0}};
  calibration.density_limit = limit;
  calibration.shown_from_density = 0.049;
  calibration.shown_to_density = 3.051;
  calibration.reference = "grey.csv";
  calibration.date = "2025-03-04";
  calibration.tool_version = "0.1.0";
  calibration.steps.resize(21);
  calibration.steps[0].used = false;
  calibration.steps[0].left_out = fact_of(Unknown::step_clipped);
  return calibration;
}

TEST(CalibrationVerdict, ClaimsNoDoubtBeyondTheLimit) {
  const std::string deep = calibration_verdict(calibration_to(2.96));
  EXPECT_THAT(deep, StartsWith("Densities up to 3.0 "));
  EXPECT_THAT(deep, AllOf(HasSubstr(" at 1.0"), HasSubstr(" at 2.0")));
  const std::string middling = calibration_verdict(calibration_to(1.4));
  EXPECT_THAT(middling, AllOf(HasSubstr(" at 1.0"), Not(HasSubstr(" at 2.0"))));
  EXPECT_THAT(calibration_verdict(calibration_to(0.8)), Not(HasSubstr("within")));
}

TEST(CalibrationVerdict, CallsAShapeNoDensity) {
  ScannerCalibration calibration = calibration_to(3.0);
  calibration.shape_only = true;
  EXPECT_THAT(calibration_verdict(calibration), HasSubstr("no densities yet"));
  EXPECT_THAT(calibration_verdict(calibration), Not(HasSubstr("can now be measured")));
}

TEST(CalibrationDoubt, AddsFitStrayLightAndCertificateInSquares) {
  ScannerCalibration calibration;
  calibration.doubt = {{0.0, 0.03, 0.04}, {4.0, 0.03, 0.04}};
  EXPECT_NEAR(calibration_u95(calibration, 1.0), 1.96 * 0.05, 1e-12);
  calibration.certificate_doubt = 0.12;
  EXPECT_NEAR(calibration_u95(calibration, 1.0), 1.96 * 0.13, 1e-12);
  // The certificate's zero is common to film and wedge, its slope grows.
  EXPECT_LT(calibration_u95(calibration, 0.1), calibration_u95(calibration, 1.0));
  EXPECT_NEAR(calibration_u95(calibration, 2.0), calibration_u95(calibration, 1.0), 1e-12);
  calibration.slope_doubt_share = 0.05;
  EXPECT_GT(calibration_u95(calibration, 2.0), calibration_u95(calibration, 1.0));
}

TEST(CalibrationMethodWords, CountWhatWasUsedByItsName) {
  ScannerCalibration calibration = calibration_to(3.0);
  const auto first = [&](CalibrationMethod method) {
    calibration.method = method;
    return calibration_method(calibration).front();
  };
  EXPECT_EQ(first(CalibrationMethod::wedge), "20 of 21 steps were used; reference: grey.csv.");
  EXPECT_THAT(first(CalibrationMethod::nominal_wedge), HasSubstr("nominal densities, grey.csv"));
  EXPECT_EQ(first(CalibrationMethod::layers), "20 of 21 layers were used.");
  EXPECT_EQ(first(CalibrationMethod::bracket), "20 of 21 exposures were used.");
}

TEST(CalibrationMethodWords, TellRangeAndSettings) {
  ScannerCalibration calibration = calibration_to(3.0);
  calibration.residual_rms = 0.00314;
  calibration.device = ScannerDevice::film_scanner;
  auto said = calibration_method(calibration);
  EXPECT_EQ(fault_of(said), "");
  EXPECT_THAT(said, Contains(EndsWith("up to the limit: 0.0031.")));
  EXPECT_THAT(said, Contains(HasSubstr("from 0.05 to 3.05;")));
  EXPECT_THAT(said, Contains(StartsWith("Settings: 16 bits, colour, film scanner.")));
  EXPECT_EQ(said.back(), "Made 2025-03-04 by fogline 0.1.0.");
  calibration.channels = 1;
  calibration.device = ScannerDevice::unknown;
  calibration.checksum = "a1b2";
  said = calibration_method(calibration);
  EXPECT_THAT(said, Contains(StartsWith("Settings: 16 bits, grey. ")));
  EXPECT_THAT(said.back(), EndsWith("0.1.0, a1b2."));
  calibration.date.clear();
  EXPECT_THAT(calibration_method(calibration).back(), StartsWith("Made by fogline"));
}

TEST(StraySentence, GivesAnUpperEndWhereTheShareIsWithinItsDoubt) {
  ScannerCalibration calibration = calibration_to(3.0);
  calibration.stray = {0.012, 0.002, true};
  EXPECT_THAT(stray_sentence(calibration), HasSubstr("is 1.2 ± 0.4 % of an evenly lit field"));
  EXPECT_THAT(stray_sentence(calibration), HasSubstr("opaque areas and the shape"));
  calibration.stray = {0.002, 0.004, false};
  EXPECT_THAT(stray_sentence(calibration), HasSubstr("is 0.2 (at most 1.0) %"));
  EXPECT_THAT(stray_sentence(calibration), Not(HasSubstr("opaque")));
  for (const CalibrationMethod method : {CalibrationMethod::layers, CalibrationMethod::bracket}) {
    calibration.method = method;
    EXPECT_THAT(stray_sentence(calibration), StartsWith("Stray light wasn't told"));
  }
}

TEST(CalibrationSteps, SayWhyTheyAreLeftOut) {
  CalibrationStep step;
  step.left_out = fact_of(Unknown::step_clipped);
  EXPECT_EQ(step_fate(step), "");
  step.used = false;
  EXPECT_EQ(step_fate(step), "It stands at the top code.");
  step.left_out.reset();
  EXPECT_EQ(step_fate(step), "");
}

TEST(CalibrationSteps, GiveTheirDifferenceWithItsSign) {
  CalibrationStep step;
  step.density = 1.0004;
  step.reference_density = 1.0126;
  EXPECT_EQ(step_difference(step), "−0.012");
  step.density = INFINITY;
  EXPECT_EQ(step_difference(step), "–");
  step.density = NAN;
  EXPECT_EQ(step_difference(step), "–");
}

}  // namespace
}  // namespace fogline
