#include "record/json_reader.h"
#include "record/json_writer.h"
#include "record/judgement_tables.h"
#include "record/older_reports.h"

#include <fogline/base/refusal.h>
#include <fogline/record/record_json.h>

#include <string>
#include <utility>

#include <nlohmann/json.hpp>

// A report says `version` 1, and will as long as whoever reads version 1 can read it: no field is
// renamed, retyped or given another meaning, and what a version asks for stays. `revision` counts
// what was added since:
//
//   1 (not written)  numbers rounded to four decimals, sentences alone
//   2                numbers that read back exactly; a fact (code, numbers, names) beside every
//                    sentence; outlines, marks' middles, the curve's whole table and steps
//
// A reader of an older revision finds what it knows and passes over the rest; this one brings older
// reports up to date (older_reports.cc) and takes what they don't hold as it is by default. A
// report of a later revision is read too: unknown keys are passed over, an unknown word is read as
// the member that claims least, an unknown fact as its sentence. Only another version is refused.
// Reports of every revision are kept in tests/record/fixtures.

namespace fogline {
namespace {

using Json = nlohmann::ordered_json;

constexpr std::string_view report_format = "fogline report";
constexpr int report_version = 1;
constexpr int report_revision = 2;
/// Objects and lists within one another: reports need 12.
constexpr int most_nested = 64;

/// Whether brackets nest no deeper than reports can need, so that nothing that walks the parsed
/// text by calling itself can run out of stack.
bool nests_reasonably(std::string_view text) {
  int depth = 0;
  bool in_string = false;
  for (std::size_t i = 0; i < text.size() && depth <= most_nested; ++i) {
    const char letter = text[i];
    if (in_string) {
      i += letter == '\\' ? 1 : 0;
      in_string = letter != '"';
    } else if (letter == '"') {
      in_string = true;
    } else if (letter == '{' || letter == '[') {
      ++depth;
    } else if (letter == '}' || letter == ']') {
      --depth;
    }
  }
  return depth <= most_nested;
}

Json parsed(std::string_view text, const std::string& file) {
  Json report = nests_reasonably(text) ? Json::parse(text, nullptr, false) : Json();
  if (report.is_discarded()) {
    throw FileError(file, Refusal::report_no_json);
  }
  if (!report.is_object() || !report.contains("format") || report["format"] != report_format) {
    throw FileError(file, Refusal::no_report);
  }
  const auto version = report.find("version");
  if (version == report.end() || !version->is_number()) {
    throw FileError(file, Refusal::report_field_unfit, {}, {"version"});
  }
  if (*version != report_version) {
    throw FileError(file, Refusal::report_of_other_version, {version->get<double>()});
  }
  return report;
}

int revision_of(const Json& report, const std::string& file) {
  const auto revision = report.find("revision");
  if (revision == report.end()) {
    return 1;
  }
  if (!revision->is_number_integer()) {
    throw FileError(file, Refusal::report_field_unfit, {}, {"revision"});
  }
  return *revision >= report_revision ? report_revision : 1;
}

}  // namespace

std::string json_from_record(const RollRecord& record) {
  Json body;
  JsonWriter writer(body);
  RollRecord walked = record;
  writer.object([&] { walk_fields(writer, walked); });
  Json report{
      {"format", report_format}, {"version", report_version}, {"revision", report_revision}};
  report.update(body);
  constexpr int indent = 2;
  return report.dump(indent, ' ', false, Json::error_handler_t::replace) + "\n";
}

RollRecord record_from_json(std::string_view text, std::string_view file) {
  const std::string name(file);
  Json report = parsed(text, name);
  bring_up_to_date(report, revision_of(report, name));
  RollRecord record;
  JsonReader reader(report);
  try {
    reader.object([&] { walk_fields(reader, record); });
  } catch (const UnfitField& field) {
    throw FileError(name, Refusal::report_field_unfit, {}, {field.what()});
  }
  return record;
}

}  // namespace fogline
