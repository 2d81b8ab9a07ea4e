#include "record/report_files.h"

#include <fogline/record/record_json.h>

#include <string>

#include <gtest/gtest.h>
#include <nlohmann/json.hpp>

namespace fogline {
namespace {

using nlohmann::json;

RollRecord record_of(const std::filesystem::path& path) {
  return record_from_json(text_of_file(path), path.filename().string());
}

TEST(OlderReports, AreKept) {
  EXPECT_GE(reports_of_revision_1().size(), 5U);
}

TEST(OlderReports, ReadBackWhenWrittenAgain) {
  for (const auto& path : reports_of_revision_1()) {
    const RollRecord record = record_of(path);
    EXPECT_FALSE(record.measurement.scans.empty()) << path;
    EXPECT_EQ(record_from_json(json_from_record(record), "again.json"), record) << path;
  }
}

TEST(OlderReports, AreOfTheFirstRevision) {
  for (const auto& path : reports_of_revision_1()) {
    EXPECT_FALSE(json::parse(text_of_file(path)).contains("revision")) << path;
  }
}

/// Older marks told why fields are null that aren't.
bool explains_nothing(const json& object) {
  for (const auto& [field, reason] : object["reasons"].items()) {
    if (!object["reasons"].is_object() || !object.contains(field) || object[field].is_null()) {
      return false;
    }
  }
  return true;
}

// Whatever an older report holds stands in the one that is written from it: the same keys, words,
// truths and sentences; numbers within the rounding of four decimals that they had.
void expect_holds(const json& newer, const json& older, const std::string& path) {
  // Two rounded numbers may have been added, and the sum has its own last digit.
  constexpr double rounding = 1.0001e-4;
  if (older.is_object()) {
    ASSERT_TRUE(newer.is_object()) << path;
    for (const auto& [key, value] : older.items()) {
      if (key == "reasons" && explains_nothing(older)) {
        continue;
      }
      ASSERT_TRUE(newer.contains(key)) << path << "/" << key;
      expect_holds(newer[key], value, path + "/" + key);
    }
  } else if (older.is_array()) {
    ASSERT_TRUE(newer.is_array()) << path;
    ASSERT_EQ(newer.size(), older.size()) << path;
    for (std::size_t i = 0; i < older.size(); ++i) {
      expect_holds(newer[i], older[i], path + "/" + std::to_string(i));
    }
  } else if (older.is_number()) {
    ASSERT_TRUE(newer.is_number()) << path;
    EXPECT_NEAR(newer.get<double>(), older.get<double>(), rounding) << path;
  } else {
    EXPECT_EQ(newer, older) << path;
  }
}

TEST(OlderReports, LoseNothingWhenWrittenAgain) {
  for (const auto& path : reports_of_revision_1()) {
    expect_holds(json::parse(json_from_record(record_of(path))), json::parse(text_of_file(path)),
                 path.filename().string() + ":");
  }
}

TEST(OlderReports, KeepToTheSchemaWhenWrittenAgain) {
  const SchemaCheck schema = report_schema();
  for (const auto& path : reports_of_revision_1()) {
    EXPECT_EQ(schema.faults(json::parse(json_from_record(record_of(path)))),
              std::vector<std::string>{})
        << path;
  }
}

TEST(OlderReports, SayWhyInTheSentencesThatTheyHad) {
  const RollRecord record = record_of(std::filesystem::path(FOGLINE_SOURCE_DIR) /
                                      "tests/record/fixtures/thin-dye-135-card.json");
  const ScanMeasurement& scan = record.measurement.scans.front();
  ASSERT_FALSE(scan.leader);
  EXPECT_EQ(scan.leader.why().told, "No fogged leader is in the scan.");
  ASSERT_TRUE(record.card);
  EXPECT_EQ(record.card->name, "Roll 12");
  EXPECT_EQ(record.card->development.time_s, 450.0);
}

}  // namespace
}  // namespace fogline
