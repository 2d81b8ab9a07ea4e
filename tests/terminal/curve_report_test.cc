#include "page/html.h"
#include "record/curve_csv.h"
#include "record/invented_reports.h"
#include "terminal/text.h"

#include <fogline/record/record_json.h>

#include <algorithm>

#include <gmock/gmock.h>
#include <gtest/gtest.h>
#include <nlohmann/json.hpp>

namespace fogline {
namespace {

using testing::HasSubstr;
using testing::Not;

using invented::bracket_record;

TextOptions whole() {
  TextOptions options;
  options.full = true;
  return options;
}

TEST(CurveReport, IsPrinted) {
  const std::string text = text_from_record(bracket_record(), whole());
  EXPECT_THAT(text, HasSubstr("The curve"));
  EXPECT_THAT(text, HasSubstr("contrast index"));
  EXPECT_THAT(text, HasSubstr("average gradient over 1.50"));
  EXPECT_THAT(text, HasSubstr("ISO range R"));
  EXPECT_THAT(text, HasSubstr("frame 7"));
  // The target's frames are no pictures.
  EXPECT_THAT(text, Not(HasSubstr("Shadow and highlight")));
  EXPECT_THAT(text, Not(HasSubstr("nan")));
}

TEST(CurveReport, IsDrawn) {
  const std::string page = html_from_record(bracket_record(), {}, {DensityUnits::density});
  EXPECT_THAT(page, HasSubstr("<h2>The curve</h2>"));
  for (const char* part :
       {"class=\"response\"", "class=\"band\"", "class=\"arc\"", "class=\"chord\"",
        "class=\"triangle\"", "class=\"wished\"", "class=\"zone\"", "class=\"dot\""}) {
    EXPECT_THAT(page, HasSubstr(part));
  }
  EXPECT_THAT(page, Not(HasSubstr("nan")));
}

TEST(CurveReport, SaysWhyThereIsNoCurve) {
  RollRecord record = bracket_record();
  record.measurement.sensitometry = Unknown::no_rising_curve;
  record.judgement.curve.reset();
  record.measurement.target_cautions.push_back(
      {Severity::caution, fact_of(CautionKind::target_unread), fact_of(Unknown::no_rising_curve)});
  EXPECT_THAT(text_from_record(record, whole()),
              HasSubstr("No characteristic curve: no curve passes the exposed steps;"));
  EXPECT_THAT(html_from_record(record, {}, {DensityUnits::density}),
              HasSubstr("No characteristic curve: no curve passes the exposed steps;"));
}

TEST(CurveCsv, HoldsStepsCurveAndReadings) {
  const std::string csv = curve_csv(invented::bracket_roll());
  EXPECT_EQ(csv.rfind("kind,name,log_h,net_density,u95,used\r\n", 0), 0U);
  EXPECT_THAT(csv, HasSubstr("step,\"frame 6\",0.0000,"));
  EXPECT_THAT(csv, HasSubstr("reading,\"contrast index\",,0."));
  const auto lines = std::count(csv.begin(), csv.end(), '\n');
  EXPECT_GT(lines, 150);
  EXPECT_EQ(curve_csv(RollMeasurement{}), "kind,name,log_h,net_density,u95,used\r\n");
}

TEST(CurveJson, HoldsTheCurveAndWhatIsReadFromIt) {
  const auto json = nlohmann::json::parse(json_from_record(bracket_record()));
  const auto& contrast = json["contrast"];
  EXPECT_EQ(contrast["method"], "bracket");
  EXPECT_EQ(contrast["log_h_absolute"], false);
  EXPECT_EQ(contrast["average_gradient_log_h_range"], 1.5);
  EXPECT_GT(contrast["curve"].size(), 50U);
  EXPECT_EQ(contrast["zones"]["densities"].size(), 11U);
  EXPECT_TRUE(contrast["iso"]["speed"].is_null());
  EXPECT_THAT(contrast["iso"]["reasons"]["speed"].get<std::string>(), HasSubstr("lux"));
  EXPECT_EQ(contrast["use"]["development"], "normal");
  // The curve's densities count from the light path, base included.
  const auto& place = contrast["curve"].front();
  EXPECT_NEAR(place["density"].get<double>() - place["net_density"].get<double>(), 0.284, 1e-3);
}

}  // namespace
}  // namespace fogline
