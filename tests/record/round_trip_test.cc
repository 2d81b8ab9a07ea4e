#include "record/invented_curve.h"
#include "record/invented_judgement.h"
#include "record/random_record.h"
#include "record/report_files.h"

#include <fogline/record/record_json.h>

#include <gtest/gtest.h>

namespace fogline {
namespace {

RollRecord read_back(const RollRecord& record) {
  return record_from_json(json_from_record(record), "report.json");
}

TEST(RoundTrip, InventedRolls) {
  for (const RollRecord& record :
       {invented::record(invented::roll()), invented::record(invented::unfit_roll()),
        invented::record(RollMeasurement{}), invented::record(invented::bracket_roll()),
        invented::short_record(), invented::normal_record(), invented::undecided_record()}) {
    EXPECT_EQ(read_back(record), record) << json_from_record(record);
  }
}

TEST(RoundTrip, TenThousandRandomRecords) {
  constexpr std::uint64_t records = 10000;
  for (std::uint64_t seed = 1; seed <= records; ++seed) {
    const RollRecord record = random_record(seed);
    const std::string text = json_from_record(record);
    const RollRecord read = record_from_json(text, "report.json");
    ASSERT_EQ(read, record) << "seed " << seed << ": "
                            << nlohmann::json::diff(nlohmann::json::parse(text),
                                                    nlohmann::json::parse(json_from_record(read)));
  }
}

TEST(RoundTrip, RandomRecordsDiffer) {
  EXPECT_NE(random_record(1), random_record(2));
  RollRecord changed = random_record(1);
  changed.tool_version += "x";
  EXPECT_NE(changed, random_record(1));
}

TEST(RoundTrip, NumbersKeepEveryDigit) {
  RollRecord record = invented::record(invented::roll());
  record.measurement.scans.front().density_limit = 0.1 + 0.2;
  EXPECT_EQ(*read_back(record).measurement.scans.front().density_limit, 0.1 + 0.2);
}

TEST(RoundTrip, WhatIsWrittenKeepsToTheSchema) {
  const SchemaCheck schema = report_schema();
  constexpr std::uint64_t records = 300;
  for (std::uint64_t seed = 1; seed <= records; ++seed) {
    const auto report = nlohmann::json::parse(json_from_record(random_record(seed)));
    ASSERT_EQ(schema.faults(report), std::vector<std::string>{}) << "seed " << seed;
  }
  for (const RollRecord& record : {invented::record(invented::bracket_roll()),
                                   invented::short_record(), invented::undecided_record()}) {
    const auto report = nlohmann::json::parse(json_from_record(record));
    EXPECT_EQ(schema.faults(report), std::vector<std::string>{});
  }
}

TEST(RoundTrip, TheSchemaCheckFindsPlantedFaults) {
  const SchemaCheck schema = report_schema();
  const auto report = nlohmann::json::parse(json_from_record(invented::short_record()));
  const auto faults_with = [&](const char* place, const nlohmann::json& value) {
    auto spoilt = report;
    spoilt[nlohmann::json::json_pointer(place)] = value;
    return schema.faults(spoilt).size();
  };
  EXPECT_EQ(faults_with("/tool_version", "0.2.0"), 0U);
  EXPECT_EQ(faults_with("/tool_version", 2), 1U);
  EXPECT_EQ(faults_with("/version", 2), 1U);
  EXPECT_EQ(faults_with("/scans/0/fitness", "splendid"), 1U);
  EXPECT_EQ(faults_with("/scans/0/tint/confidence", 1.5), 1U);
  EXPECT_EQ(faults_with("/scans/0/frames/0/box_px/width", -1.0), 1U);
  EXPECT_EQ(faults_with("/scans/0/base_fog/visual/value", nullptr), 1U);
  EXPECT_EQ(faults_with("/scans/0/base_fog/violet", 1.0), 1U);
  EXPECT_EQ(faults_with("/scans/0/undescribed", 1), 1U);
  EXPECT_EQ(faults_with("/roll", nlohmann::json::object()), 1U);
}

}  // namespace
}  // namespace fogline
