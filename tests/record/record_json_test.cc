#include "record/invented_judgement.h"
#include "words/schema_words.h"

#include <fogline/record/record_json.h>

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
  return json::parse(json_from_record(invented::record(std::move(roll))));
}

json json_of(const RollRecord& record) {
  return json::parse(json_from_record(record));
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
  EXPECT_EQ(scan["reasons"]["leader"], "No fogged leader is in the scan.");
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

TEST(RecordJson, SaysWhyATintIsUnknown) {
  RollMeasurement roll = invented::roll();
  Tint& unknown = roll.scans.front().tint;
  unknown.kind = Unknown::grey_scan;
  unknown.density = Unknown::grey_scan;
  unknown.detection_limit = Unknown::grey_scan;
  const json tint = json_of(roll)["scans"][0]["tint"];
  EXPECT_EQ(tint["kind"], "unknown");
  EXPECT_EQ(tint["density"], nullptr);
  EXPECT_EQ(tint["confidence"], 0.0);
  for (const char* field : {"kind", "density", "detection_limit"}) {
    EXPECT_EQ(tint["reasons"][field], "The scan is grey: a tint shows only in a scan in colour.");
    EXPECT_EQ(tint["why"][field]["code"], "grey-scan");
  }
}

TEST(RecordJson, HoldsTintAndItsComponents) {
  const json tint = json_of(invented::short_record())["scans"][0]["tint"];
  EXPECT_EQ(tint["kind"], "dye-left");
  EXPECT_EQ(tint["density"]["value"], 0.084);
  EXPECT_EQ(tint["confidence"], 0.97);
  EXPECT_EQ(tint["components"][1]["kind"], "yellow-stain");
  EXPECT_EQ(tint["components"][1]["density"]["u95"], 0.024);
  EXPECT_EQ(tint["detection_limit"], 0.03);
  EXPECT_EQ(tint["may_be_stock"], false);
  EXPECT_FALSE(tint.contains("reasons"));
  const json clean = json_of(invented::normal_record())["scans"][0]["tint"];
  EXPECT_EQ(clean["kind"], "none");
  EXPECT_EQ(clean["density"], nullptr);
  EXPECT_TRUE(clean["reasons"].contains("density"));
}

TEST(RecordJson, HoldsMarks) {
  const json marks = json_of(invented::short_record())["scans"][0]["marks"];
  ASSERT_EQ(marks.size(), 5U);
  EXPECT_EQ(marks[0]["kind"], "drying-mark");
  EXPECT_EQ(marks[0]["strip"], 1);
  EXPECT_EQ(marks[0]["box_px"]["width"], 22.0);
  EXPECT_EQ(marks[0]["size_mm"], 2.2);
  EXPECT_EQ(marks[0]["contrast_density"], 0.12);
  EXPECT_EQ(marks[1]["contrast_density"], -0.31);
  EXPECT_EQ(marks[4]["contrast_density"], nullptr);
  EXPECT_TRUE(marks[4]["reasons"].contains("contrast_density"));
}

TEST(RecordJson, HoldsTheCardAsUnderstood) {
  const json roll = json_of(invented::short_record())["roll"];
  EXPECT_EQ(roll["name"], "Roll 12");
  EXPECT_EQ(roll["film_type"], "tabular");
  EXPECT_EQ(roll["base_tint"]["blue"], 0.27);
  EXPECT_EQ(roll["development"]["time_s"], 450.0);
  EXPECT_EQ(roll["fix"]["kind"], "rapid");
  EXPECT_EQ(roll["fix"]["rolls_before"], 9);
  EXPECT_EQ(roll["wash"]["fills"], json::array({5, 10, 20}));
  EXPECT_FALSE(roll.contains("camera"));
  EXPECT_FALSE(roll.contains("target"));
  RollRecord bare = invented::short_record();
  bare.card = RollCard{};
  bare.card->name = "Roll 13";
  bare.card->target = TargetCard{};
  bare.card->target->stops = {-5.0, 0.0};
  EXPECT_EQ(json_of(bare)["roll"],
            json({{"name", "Roll 13"}, {"target", {{"kind", "bracket"}, {"stops", {-5.0, 0.0}}}}}));
}

TEST(RecordJson, HoldsLightOrTime) {
  const json weighed = json_of(invented::short_record())["light_or_time"];
  EXPECT_EQ(weighed["judged"], true);
  EXPECT_EQ(weighed["probabilities"]["under-developed"], 0.79);
  EXPECT_EQ(weighed["exposure_stops"]["value"], -0.2);
  EXPECT_EQ(weighed["contrast_index"]["u95"], 0.08);
  EXPECT_EQ(weighed["evidence"].size(), 2U);
  EXPECT_THAT(weighed["would_tell_most"].get<std::string>(), HasSubstr("leader"));
  RollRecord unknown = invented::record(invented::roll());
  unknown.judgement.light_or_time.causes = Unknown::no_picture;
  unknown.judgement.light_or_time.contrast_index = Unknown::no_picture;
  const json silent = json_of(unknown)["light_or_time"];
  EXPECT_EQ(silent["probabilities"], nullptr);
  EXPECT_THAT(silent["reasons"]["contrast_index"].get<std::string>(),
              HasSubstr("No picture is in sight"));
}

TEST(RecordJson, HoldsAdvice) {
  const json report = json_of(invented::short_record());
  const json& advice = report["advice"];
  EXPECT_EQ(report["aim"]["contrast_index"], 0.58);
  EXPECT_EQ(advice["development"]["time_s"], 600.0);
  EXPECT_EQ(advice["development"]["time_u95_s"], 80.0);
  EXPECT_EQ(advice["development"]["change_percent"], 33.3);
  EXPECT_EQ(advice["development"]["predicted_contrast_index"]["value"], 0.57);
  EXPECT_EQ(advice["exposure"]["exposure_index"], 250.0);
  EXPECT_EQ(advice["fix"]["change"], "renew");
  EXPECT_EQ(advice["wash"]["time_s"], nullptr);
  EXPECT_EQ(advice["wash"]["fills"], json::array({5, 10, 20, 30}));
  EXPECT_EQ(advice["this_roll"].size(), 4U);
}

TEST(RecordJson, BoundsProbabilities) {
  RollRecord record = invented::short_record();
  record.judgement.findings[0].confidence = 0.9999999;
  record.judgement.findings[1].confidence = 1.5;
  record.judgement.findings[2].confidence = std::nan("");
  const json findings = json_of(record)["findings"];
  EXPECT_EQ(findings[0]["confidence"], 0.9999999);
  EXPECT_EQ(findings[1]["confidence"], 1.0);
  EXPECT_EQ(findings[2]["confidence"], 0.0);
}

// So that what is read back is what was written.
TEST(RecordJson, WritesDensitiesInFull) {
  RollMeasurement roll = invented::roll();
  roll.scans.front().base_fog->visual = invented::density(0.123456, 0.00004);
  roll.scans.front().frames.front().tone.shadow = invented::density(-0.00001, 0.02);
  const std::string text = json_from_record(invented::record(roll));
  EXPECT_THAT(text, HasSubstr("\"value\": 0.123456"));
  EXPECT_THAT(text, HasSubstr("\"shadow\": -1e-05,"));
}

// Every null of the report has its reason in the object that holds it; in advice `reasons` is a
// list.
void expect_reasons(const json& value, const std::string& path) {
  if (value.is_object()) {
    for (const auto& [name, field] : value.items()) {
      if (field.is_null() && value.contains("reasons") && value["reasons"].is_array()) {
        EXPECT_FALSE(value["reasons"].empty()) << path << "/" << name;
      } else if (field.is_null()) {
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
  scan.pixels_per_mm = {};
  scan.base_fog = {};
  scan.strips.front().base_fog = {};
  scan.density_limit = {};
  scan.veiling_glare = {};
  scan.frames.front().tone = FrameTone{};
  bare.medians->net_shadow = {};
  for (const RollMeasurement& roll : {bare, invented::unfit_roll(), RollMeasurement{}}) {
    expect_reasons(json_of(roll), "");
  }
  RollRecord silent = invented::undecided_record();
  silent.judgement.advice = Advice{};
  for (const RollRecord& record : {invented::short_record(), invented::normal_record(),
                                   invented::undecided_record(), silent}) {
    expect_reasons(json_of(record), "");
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

TEST(RecordJson, HoldsFindingsInTheirOrder) {
  EXPECT_TRUE(json_of(invented::roll())["findings"].empty());
  const json findings = json_of(invented::short_record())["findings"];
  ASSERT_EQ(findings.size(), 4U);
  EXPECT_EQ(findings[0]["code"], "dye-left");
  EXPECT_EQ(findings[0]["confidence"], 0.97);
  EXPECT_EQ(findings[1]["message"], "Drops dried on the film.");
  EXPECT_EQ(findings[1]["evidence"][0], "Seen: drying marks, 1.");
}

TEST(RecordJson, HoldsFactsBesideTheirSentences) {
  const json report = json_of(invented::short_record());
  const json& finding = report["findings"][0];
  EXPECT_EQ(finding["message_facts"], json::array({{{"code", "dye-left"}}}));
  EXPECT_EQ(finding["evidence_facts"][0]["code"], "coloured-veil");
  EXPECT_EQ(finding["evidence_facts"][0]["numbers"]["density"], 0.084);
  const json& weighed = report["light_or_time"];
  EXPECT_EQ(weighed["evidence_facts"].size(), weighed["evidence"].size());
  EXPECT_EQ(weighed["would_tell_most_code"], "scan-leader");
  const json& advice = report["advice"];
  for (const char* part : {"development", "exposure", "stop", "fix", "wash"}) {
    EXPECT_EQ(advice[part]["facts"].size(), advice[part]["reasons"].size()) << part;
  }
  EXPECT_EQ(advice["development"]["facts"][1]["numbers"]["old_chance"], 0.04);
  EXPECT_EQ(advice["this_roll_facts"].size(), advice["this_roll"].size());
  EXPECT_EQ(advice["this_roll_facts"][1]["code"], "wash-out-dye");
  EXPECT_EQ(report["aim"]["source_code"], "diffusion");
}

TEST(RecordJson, SaysWhyNothingIsAdvised) {
  RollRecord record = invented::short_record();
  record.judgement.advice->development = {};
  record.judgement.advice->development.predicted_contrast_index = Unknown::developer_weak;
  const json development = json_of(record)["advice"]["development"];
  EXPECT_EQ(development["why"]["predicted_contrast_index"]["code"], "developer-weak");
  EXPECT_THAT(development["reasons"][0].get<std::string>(), HasSubstr("The developer was weak"));
}

TEST(RecordJson, ListsFilesThatCouldNotBeRead) {
  RollMeasurement roll;
  roll.unread.push_back({"gone.tif", {Refusal::too_many_pixels, {200000, 3}, {}, {}}});
  roll.unread.push_back({"lost.tif", {Refusal::cant_open, {}, {"No such file or directory"}, {}}});
  const json report = json_of(roll);
  EXPECT_EQ(report["unread"][0]["file"], "gone.tif");
  EXPECT_EQ(report["unread"][0]["message"],
            "gone.tif claims 200000 by 3 pixels, more than any scan has; scan fewer strips at a "
            "time.");
  EXPECT_EQ(report["unread"][0]["fact"]["code"], "too-many-pixels");
  EXPECT_EQ(report["unread"][0]["fact"]["numbers"], (json{{"width_px", 200000}, {"height_px", 3}}));
  EXPECT_EQ(report["unread"][1]["fact"]["code"], "cant-open");
  EXPECT_EQ(report["unread"][1]["fact"]["names"], (json{{"system", "No such file or directory"}}));
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
  EXPECT_EQ(schema_word(TintKind::antihalation_dye), "antihalation-dye");
  EXPECT_EQ(schema_word(MarkKind::interference_rings), "interference-rings");
  EXPECT_EQ(schema_word(TargetKind::exposed_wedge), "exposed-wedge");
}

}  // namespace
}  // namespace fogline
