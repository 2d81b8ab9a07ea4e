#include "output_files.h"

#include "files/write_file.h"
#include "page/html.h"

#include <fogline/base/refusal.h>
#include <fogline/tables/read_tables.h>

#include <filesystem>
#include <fstream>
#include <optional>

namespace fogline {
namespace {

namespace fs = std::filesystem;

// The marker stands within the first lines of a page.
constexpr std::size_t marker_reach_bytes = 1024;

bool begins_with_marker(const std::string& path, std::string_view marker) {
  std::ifstream file(path, std::ios::binary);
  std::string beginning(marker_reach_bytes, '\0');
  file.read(beginning.data(), static_cast<std::streamsize>(beginning.size()));
  beginning.resize(static_cast<std::size_t>(file.gcount()));
  return beginning.find(marker) != std::string::npos;
}

// What stands at `path` and may not be replaced, if anything does.
std::optional<Refusal> obstacle(const std::string& path) {
  std::error_code error;
  const fs::file_status status = fs::status(path, error);
  if (!fs::exists(status)) {
    return std::nullopt;
  }
  if (fs::is_directory(status)) {
    return Refusal::page_is_folder;
  }
  if (fs::is_regular_file(status) && !begins_with_marker(path, page_marker)) {
    return Refusal::foreign_page;
  }
  return std::nullopt;
}

}  // namespace

std::string default_page_path(const std::string& first_scan) {
  const fs::path scan(first_scan);
  return (scan.parent_path() / (scan.stem().string() + ".report.html")).string();
}

void write_page(const std::string& path, const std::string& page) {
  if (const auto refusal = obstacle(path)) {
    throw FileError(path, *refusal);
  }
  write_file(path, page);
}

void check_replaces_scanner_file(const std::string& path) {
  std::error_code error;
  const fs::file_status status = fs::status(path, error);
  if (fs::is_directory(status)) {
    throw FileError(path, Refusal::output_is_folder);
  }
  if (fs::is_regular_file(status) && !begins_with_marker(path, scanner_file_format)) {
    throw FileError(path, Refusal::foreign_scanner_file);
  }
}

std::string write_default_page(const std::string& first_scan, const std::string& page) {
  const std::string beside = default_page_path(first_scan);
  if (const auto refusal = obstacle(beside)) {
    throw FileError(beside, *refusal);
  }
  try {
    write_file(beside, page);
    return beside;
  } catch (const FileError&) {
    const std::string here = fs::path(beside).filename().string();
    if (here == beside) {
      throw;
    }
    write_page(here, page);
    return here;
  }
}

}  // namespace fogline
