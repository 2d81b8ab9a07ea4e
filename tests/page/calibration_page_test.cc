#include "page/calibration_page.h"

#include "density/callier.h"
#include "page/page_tree.h"
#include "page/small_picture.h"
#include "terminal/calibration_text.h"

#include <algorithm>
#include <cmath>
#include <regex>
#include <string>
#include <utility>
#include <vector>

#include <gmock/gmock.h>
#include <gtest/gtest.h>

namespace fogline {
namespace {

using testing::HasSubstr;
using testing::Not;

CalibrationStep step(int number, double reference, double read) {
  CalibrationStep made;
  made.number = number;
  made.label = std::to_string(number);
  const double left = 20.0 * number;
  made.corners_px = {{{left, 10.0}, {left + 12.0, 10.0}, {left + 12.0, 40.0}, {left, 40.0}}};
  made.code = {0.8 / number, 0.79 / number, 0.78 / number};
  made.reference_density = reference;
  made.density = read;
  made.u95 = 0.01;
  return made;
}

CalibrationRun run() {
  CalibrationRun made;
  ScannerCalibration& calibration = made.calibration;
  calibration.channels = 3;
  calibration.curves.channels = 3;
  for (CodeCurve& curve : calibration.curves.of_channel) {
    curve.code = {0.01, 0.1, 1.0};
    curve.light = {0.001, 0.05, 1.0};
  }
  calibration.bare_code = PerChannel<double>{0.9, 0.9, 0.9};
  calibration.doubt = {{0.0, 0.0, 0.0, even_field(0.4)}, {1.5, 0.01, 0.004, even_field(0.4)}};
  calibration.shown_to_density = 1.5;
  calibration.density_limit = 1.5;
  calibration.residual_rms = 0.004;
  calibration.device = ScannerDevice::flatbed;
  calibration.reference = "wedge.csv";
  calibration.source_files = {"scans/<wedge>.tif"};
  calibration.date = "2026-11-26";
  calibration.tool_version = "0.1.0";
  calibration.checksum = "crc32:00000000";
  calibration.steps = {step(1, 0.05, 0.052), step(2, 0.55, 0.549), step(3, 1.05, 1.17),
                       step(4, 1.5, 1.503)};
  calibration.steps[2].used = false;
  calibration.steps[2].outlier = true;
  calibration.steps[2].left_out = fact_of(Unknown::step_off_response);
  made.cautions = {{Severity::caution, fact_of(CautionKind::steps_left_out, {3.0})}};
  made.pictures.resize(1);
  return made;
}

TEST(CalibrationPage, TellsWhatTheScannerMayBeTrustedFor) {
  const std::string page = html_from_calibration(run(), {small_picture()});
  EXPECT_THAT(page, HasSubstr("Densities up to 1.5 can now be measured"));
  EXPECT_THAT(page, HasSubstr("Left out as not fitting the others: step 3."));
  EXPECT_THAT(page, HasSubstr("It doesn&#39;t fit the other steps: look for dirt"));
  EXPECT_THAT(page, HasSubstr(", flatbed"));
  EXPECT_THAT(page, HasSubstr("crc32:00000000"));
}

TEST(CalibrationPage, ShowsStepsResponseAndResiduals) {
  const std::string page = html_from_calibration(run(), {small_picture()});
  EXPECT_THAT(page, HasSubstr("aria-label=\"The steps found\""));
  EXPECT_THAT(page, HasSubstr("<h2>Response</h2>"));
  EXPECT_THAT(page, HasSubstr("<h2>How well it fits</h2>"));
  // 0.12 too dense: the step that was left out.
  EXPECT_THAT(page, HasSubstr("<td>0.120</td>"));
}

/// Numbers that a pattern's groups find in a page.
std::vector<std::pair<double, double>> pairs_in(const std::string& text,
                                                const std::string& pattern) {
  const std::regex expression(pattern);
  std::vector<std::pair<double, double>> pairs;
  for (std::sregex_iterator at(text.begin(), text.end(), expression), end; at != end; ++at) {
    pairs.emplace_back(std::stod((*at)[1]), std::stod((*at)[2]));
  }
  return pairs;
}

// Curves lead to directed light, the drawing shows diffuse density: drawn curve and drawn steps
// meet only where the angle of light is put back.
TEST(CalibrationPage, TheDrawnResponseRunsThroughTheDrawnSteps) {
  CalibrationRun silver = run();
  ScannerCalibration& calibration = silver.calibration;
  calibration.callier = 1.3;
  calibration.shown_to_density = 1.51;
  calibration.bare_code = PerChannel<double>{1.0, 1.0, 1.0};
  for (CodeCurve& curve : calibration.curves.of_channel) {
    curve = {{0.001, 1.0}, {0.001, 1.0}};
  }
  for (CalibrationStep& step : calibration.steps) {
    step.code.fill(std::pow(10.0, -directed_density(step.reference_density, 1.3)));
  }
  const std::string page = html_from_calibration(silver, {});
  const std::size_t begin = page.find("response c-red");
  ASSERT_NE(begin, std::string::npos);
  const std::string path = page.substr(begin, page.find("/>", begin) - begin);
  const auto curve = pairs_in(path, "[ML]([0-9.]+) ([0-9.]+)");
  const auto dots =
      pairs_in(page.substr(begin), "dot c-red\" r=\"3.0\" cx=\"([0-9.]+)%\" cy=\"([0-9.]+)%");
  ASSERT_EQ(dots.size(), 3U);
  ASSERT_GT(curve.size(), 70U);
  for (const auto& [x, y] : dots) {
    const auto near = std::min_element(curve.begin(), curve.end(), [&](auto a, auto b) {
      return std::abs(a.first - x) < std::abs(b.first - x);
    });
    // Half a step of the drawing, 0.01 of density, is 1.3 times 0.01 of 2 high: 0.65 %.
    EXPECT_NEAR(near->second, y, 0.7);
  }
}

TEST(CalibrationPage, NeedsNothingFromOutsideAndEscapesNames) {
  const std::string page = html_from_calibration(run(), {small_picture()});
  EXPECT_THAT(page, HasSubstr("&lt;wedge&gt;.tif"));
  EXPECT_THAT(page, Not(HasSubstr("<wedge>")));
  EXPECT_THAT(page, Not(HasSubstr("<script")));
  EXPECT_THAT(page, Not(HasSubstr("http://")));
  EXPECT_THAT(page, Not(HasSubstr("https://")));
}

TEST(CalibrationPage, IsWellFormedWhateverItHolds) {
  const std::string bad = "<x y=\"1\">&'</x>";
  CalibrationRun hostile = run();
  ScannerCalibration& calibration = hostile.calibration;
  calibration.source_files = {bad};
  calibration.reference = "reference " + bad;
  calibration.date = "date " + bad;
  calibration.tool_version = "version " + bad;
  calibration.checksum = "sum " + bad;
  calibration.steps[2].left_out->told = "step " + bad;
  hostile.cautions.front().fact.told = "caution " + bad;
  const auto page = page_tree::parsed(html_from_calibration(hostile, {small_picture()}));
  EXPECT_TRUE(page.all("x").empty());
  for (const char* where : {"reference ", "date ", "version ", "sum ", "step ", "caution "}) {
    EXPECT_THAT(page.text, HasSubstr(where + bad)) << where;
  }
  EXPECT_EQ(page.all("title").front()->text, "x> – scanner calibration");
}

TEST(CalibrationPage, DrawsDifferencesInsideTheirFrame) {
  const auto page = page_tree::parsed(html_from_calibration(run(), {}));
  const auto plots = page.of_class("plot");
  ASSERT_EQ(plots.size(), 2U);
  const page_tree::Node& residuals = *plots[1];
  // Densities to 1.75 across, differences of 0.05 either way: step 2 reads 0.001 too little.
  const auto dots = residuals.of_class("dot");
  ASSERT_EQ(dots.size(), 3U);
  EXPECT_NEAR(page_tree::number_of(*dots[1], "cx"), 100.0 * 0.55 / 1.75, 0.01);
  EXPECT_NEAR(page_tree::number_of(*dots[1], "cy"), 51.0, 0.01);
  // The step that was left out lies beyond the frame and is held at its edge.
  const auto crosses = residuals.of_class("out");
  ASSERT_EQ(crosses.size(), 1U);
  EXPECT_EQ(page_tree::number_of(*crosses.front(), "y"), 0.0);
  const auto limits = residuals.of_class("limit");
  ASSERT_EQ(limits.size(), 1U);
  EXPECT_NEAR(page_tree::number_of(*limits.front(), "x1"), 100.0 * 1.5 / 1.75, 0.01);
}

TEST(CalibrationPage, NumbersTheFirstAndLastStep) {
  const auto page = page_tree::parsed(html_from_calibration(run(), {small_picture()}));
  const auto numbers = page.of_class("n");
  ASSERT_EQ(numbers.size(), 2U);
  EXPECT_EQ(numbers[0]->text, "1");
  // Step 1 lies from 20 to 32 of the scan, in a picture half as large and 650 wide.
  EXPECT_EQ(numbers[0]->attribute("style"), "left:2.00%;top:2.86%");
}

TEST(CalibrationPage, TellsDoubtOnlyWhereItWasShown) {
  const auto page = page_tree::parsed(html_from_calibration(run(), {}));
  EXPECT_THAT(page.text, HasSubstr("1.5± "));
  EXPECT_THAT(page.text, Not(HasSubstr("2.0± ")));
  CalibrationRun lower = run();
  lower.calibration.density_limit = 1.2;
  EXPECT_THAT(page_tree::parsed(html_from_calibration(lower, {})).text,
              HasSubstr("beyond the limit"));
}

TEST(CalibrationPage, SaysWhereNothingStandsAgainstIt) {
  CalibrationRun clean = run();
  clean.cautions.clear();
  EXPECT_THAT(html_from_calibration(clean, {}), HasSubstr("Nothing stands against it."));
  EXPECT_THAT(text_from_calibration(clean, TextOptions()),
              Not(HasSubstr("What stands against it")));
}

TEST(CalibrationPage, WithoutAPictureShowsNoEmptyFigure) {
  EXPECT_THAT(html_from_calibration(run(), {}), Not(HasSubstr("The steps found")));
}

TEST(CalibrationText, SaysTheSameInAPlainTerminal) {
  const std::string text = text_from_calibration(run(), TextOptions());
  EXPECT_THAT(text, HasSubstr("Densities up to 1.5 can now be measured"));
  EXPECT_THAT(text, HasSubstr("1.170"));
  EXPECT_THAT(text, Not(HasSubstr("\x1b")));
}

TEST(CalibrationText, AShapeAloneMakesNoDensities) {
  CalibrationRun shape = run();
  shape.calibration.method = CalibrationMethod::layers;
  shape.calibration.shape_only = true;
  const std::string text = text_from_calibration(shape, TextOptions());
  EXPECT_THAT(text, HasSubstr("The response's shape is known, its scale isn't"));
}

}  // namespace
}  // namespace fogline
