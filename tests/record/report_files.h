#pragma once

#include "record/schema_check.h"

#include <filesystem>
#include <fstream>
#include <iterator>
#include <string>
#include <vector>

#include <gtest/gtest.h>

namespace fogline {

inline std::string text_of_file(const std::filesystem::path& path) {
  std::ifstream file(path, std::ios::binary);
  EXPECT_TRUE(file) << path;
  return {std::istreambuf_iterator<char>(file), {}};
}

/// The contract as the product ships it.
inline SchemaCheck report_schema() {
  return SchemaCheck(nlohmann::json::parse(
      text_of_file(std::filesystem::path(FOGLINE_SOURCE_DIR) / "calibration/report.schema.json")));
}

/// Reports of revision 1, kept as they were written (see the folder's README).
inline std::vector<std::filesystem::path> reports_of_revision_1() {
  std::vector<std::filesystem::path> files;
  for (const auto& entry : std::filesystem::directory_iterator(
           std::filesystem::path(FOGLINE_SOURCE_DIR) / "tests/record/fixtures")) {
    if (entry.path().extension() == ".json") {
      files.push_back(entry.path());
    }
  }
  return files;
}

}  // namespace fogline
