#include "files/input_file.h"
#include "files/small_text_file.h"
#include "tables/scanner_fields.h"

#include <fogline/tables/read_tables.h>

#include <cstdio>

#include <boost/crc.hpp>
#include <nlohmann/json.hpp>

namespace fogline {

namespace {

using Json = nlohmann::ordered_json;

constexpr int scanner_file_version = 2;
constexpr std::size_t most_bytes = 4 << 20;

/// CRC-32 (ISO 3309) of a file's fields, written without any blank.
std::string checksum_of(const Json& fields) {
  const std::string text = fields.dump(-1, ' ', false, Json::error_handler_t::replace);
  boost::crc_32_type crc;
  crc.process_bytes(text.data(), text.size());
  char hex[16];
  std::snprintf(hex, sizeof hex, "crc32:%08x", static_cast<unsigned>(crc.checksum()));
  return hex;
}

Json parsed(const std::string& text, const std::string& file) {
  Json json = Json::parse(text, nullptr, false);
  if (json.is_discarded() || !json.is_object()) {
    refuse(file, Refusal::scanner_file_no_json);
  }
  const auto format = json.find("format");
  if (format == json.end() || *format != scanner_file_format) {
    refuse(file, Refusal::no_scanner_file);
  }
  const auto version = json.find("version");
  if (version == json.end() || *version != scanner_file_version) {
    refuse(file, Refusal::scanner_file_of_other_version);
  }
  return json;
}

}  // namespace

std::string scanner_file_text(const ScannerCalibration& calibration) {
  Json fields = json_from_calibration_fields(calibration);
  Json json{{"format", scanner_file_format},
            {"version", scanner_file_version},
            {"checksum", checksum_of(fields)}};
  json.update(fields);
  return json.dump(1, ' ', false, Json::error_handler_t::replace) + "\n";
}

ScannerCalibration read_scanner_file(const std::string& file) {
  Json json = parsed(read_small_text(file, most_bytes, Refusal::scanner_file_too_large), file);
  const Json told = json.contains("checksum") ? json["checksum"] : Json();
  json.erase("format");
  json.erase("version");
  json.erase("checksum");
  const std::string checksum = checksum_of(json);
  if (told != checksum) {
    refuse(file, Refusal::scanner_file_changed);
  }
  try {
    ScannerCalibration calibration = calibration_from_json(json);
    calibration.checksum = checksum;
    return calibration;
  } catch (const WrongField& wrong) {
    refuse(file, wrong.why(), {}, {wrong.what()});
  }
}

}  // namespace fogline
