#include "record/invented_roll.h"

#include <fogline/record/record_json.h>
#include <fogline/record/schema_words.h>

#include <cmath>
#include <limits>
#include <string>

#include <gmock/gmock.h>
#include <gtest/gtest.h>
#include <nlohmann/json.hpp>

namespace fogline {
namespace {

using nlohmann::json;
using testing::HasSubstr;
using testing::Not;

json json_of(RollMeasurement roll) {
  return json::parse(json_from_record(record_from_measurement(std::move(roll), "0.1.0")));
}

TEST(RecordJson, SaysWhatItIs) {
  const json report = json_of(invented::roll());
  EXPECT_EQ(report["format"], "fogline report");
  EXPECT_EQ(report["version"], 1);
  EXPECT_EQ(report["tool_version"], "0.1.0");
  EXPECT_EQ(report["advice"], nullptr);
  EXPECT_TRUE(report["reasons"].contains("advice"));
}

TEST(RecordJson, HoldsTheScanAsMeasured) {
  const json scan = json_of(invented::roll())["scans"][0];
  EXPECT_EQ(scan["file"], "strip.tif");
  EXPECT_EQ(scan["fitness"], "indicative");
  EXPECT_EQ(scan["densities_above"], "light-path");
  EXPECT_EQ(scan["transfer"]["source"], "assumed");
  EXPECT_EQ(scan["zero"]["source"], "perforations");
  EXPECT_EQ(scan["base_fog"]["visual"]["value"], 0.284);
  EXPECT_EQ(scan["base_fog"]["visual"]["u95"], 0.031);
  EXPECT_EQ(scan["base_fog"]["blue"]["value"], 0.31);
  EXPECT_EQ(scan["film"]["format"], "135");
  EXPECT_EQ(scan["strips"][0]["perforations"], 54);
  EXPECT_EQ(scan["leader"], nullptr);
  EXPECT_EQ(scan["reasons"]["leader"], "No leader is in the scan.");
}

TEST(RecordJson, HoldsFramesFlat) {
  const json frame = json_of(invented::roll())["scans"][0]["frames"][1];
  EXPECT_EQ(frame["number"], 2);
  EXPECT_EQ(frame["shadow"], 0.41);
  EXPECT_EQ(frame["shadow_u95"], 0.034);
  EXPECT_EQ(frame["highlight"], 1.42);
  EXPECT_EQ(frame["box_px"]["x"], 480.0);
  EXPECT_EQ(frame["corners_px"][2], json::array({840.0, 295.0}));
}

TEST(RecordJson, SaysThatTintAndMarksAreNotJudged) {
  const json scan = json_of(invented::roll())["scans"][0];
  EXPECT_EQ(scan["tint"]["kind"], "unknown");
  EXPECT_EQ(scan["tint"]["density"], nullptr);
  EXPECT_EQ(scan["tint"]["confidence"], 0.0);
  EXPECT_TRUE(scan["tint"]["reasons"].contains("density"));
  EXPECT_TRUE(scan["marks"].empty());
  EXPECT_TRUE(scan["reasons"].contains("marks"));
}

TEST(RecordJson, RoundsDensitiesToFourDecimals) {
  RollMeasurement roll = invented::roll();
  roll.scans.front().base_fog->visual = invented::density(0.123456, 0.00004);
  roll.scans.front().frames.front().tone.shadow = invented::density(-0.00001, 0.02);
  const std::string text = json_from_record(record_from_measurement(roll, "0.1.0"));
  EXPECT_THAT(text, HasSubstr("\"value\": 0.1235"));
  EXPECT_THAT(text, HasSubstr("\"shadow\": 0.0,"));
  EXPECT_THAT(text, Not(HasSubstr("-0.0")));
}

// Every null of the report has its reason in the object that holds it.
void expect_reasons(const json& value, const std::string& path) {
  if (value.is_object()) {
    for (const auto& [name, field] : value.items()) {
      if (field.is_null()) {
        ASSERT_TRUE(value.contains("reasons") && value["reasons"].contains(name))
            << path << "/" << name;
        EXPECT_GT(value["reasons"][name].get<std::string>().size(), 5U);
      }
      expect_reasons(field, path + "/" + name);
    }
  } else if (value.is_array()) {
    for (const json& item : value) {
      expect_reasons(item, path + "[]");
    }
  }
}

TEST(RecordJson, GivesAReasonForEveryNull) {
  RollMeasurement bare = invented::roll();
  ScanMeasurement& scan = bare.scans.front();
  scan.reasons.clear();
  scan.pixels_per_mm.reset();
  scan.base_fog.reset();
  scan.strips.front().base_fog.reset();
  scan.density_limit.reset();
  scan.veiling_glare.reset();
  scan.frames.front().tone = FrameTone{};
  bare.medians->net_shadow.reset();
  for (const RollMeasurement& roll : {bare, invented::unfit_roll(), RollMeasurement{}}) {
    expect_reasons(json_of(roll), "");
  }
}

TEST(RecordJson, WritesNullForWhatIsNoNumber) {
  RollMeasurement roll = invented::roll();
  const double nan = std::nan("");
  const double infinity = std::numeric_limits<double>::infinity();
  ScanMeasurement& scan = roll.scans.front();
  scan.base_fog->visual.value = nan;
  scan.frames.front().tone.highlight = invented::density(infinity, 0.1);
  scan.frames.front().tone.middle = invented::density(1.0, nan);
  scan.frames.front().box_px.x = nan;
  scan.density_limit = infinity;
  const json report = json_of(roll);
  EXPECT_EQ(report["scans"][0]["base_fog"], nullptr);
  EXPECT_EQ(report["scans"][0]["frames"][0]["highlight"], nullptr);
  EXPECT_FALSE(report["scans"][0]["frames"][0].contains("middle_u95"));
  EXPECT_EQ(report["scans"][0]["frames"][0]["box_px"]["x"], 0.0);
  expect_reasons(report, "");
}

TEST(RecordJson, FindsScansUnfitWithTheirEvidence) {
  EXPECT_TRUE(json_of(invented::roll())["findings"].empty());
  const json finding = json_of(invented::unfit_roll())["findings"][0];
  EXPECT_EQ(finding["code"], "unfit-scan");
  EXPECT_GE(finding["confidence"], 0.9);
  EXPECT_EQ(finding["evidence"][0],
            "white.png: There is no film in the picture: lay the strip in the light.");
}

TEST(RecordJson, ListsFilesThatCouldNotBeRead) {
  RollMeasurement roll;
  roll.unread.push_back({"gone.tif", "gone.tif isn't there."});
  const json report = json_of(roll);
  EXPECT_EQ(report["unread"][0]["file"], "gone.tif");
  EXPECT_TRUE(report["scans"].empty());
  EXPECT_EQ(report["roll_medians"], nullptr);
}

TEST(RecordJson, SurvivesNamesThatAreNotUtf8) {
  EXPECT_NO_THROW(json_of(invented::roll("strip-\xFF\xFE.tif")));
}

TEST(SchemaWords, JoinWordsByHyphens) {
  EXPECT_EQ(schema_word(Fitness::marks_only), "marks-only");
  EXPECT_EQ(schema_word(ZeroSource::clear_gate), "clear-gate");
  EXPECT_EQ(schema_word(BaseFogSource::between_frames), "between-frames");
  EXPECT_EQ(schema_word(TransferSource::icc_profile), "icc-profile");
  EXPECT_EQ(schema_word(ContrastMethod::scene_estimate), "scene-estimate");
}

}  // namespace
}  // namespace fogline
