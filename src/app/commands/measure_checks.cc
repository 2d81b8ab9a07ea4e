#include "app/commands/measure_checks.h"

#include "app/command_line/usage_error.h"
#include "app/commands/option_values.h"
#include "app/commands/option_words.h"

namespace fogline {
namespace {

bool is_output_file(const std::optional<std::string>& path) {
  return path && *path != "-";
}

bool has_page(const MeasureRequest& request) {
  return request.html != no_page;
}

void check_scans(const MeasureRequest& request) {
  if (request.scans.empty()) {
    throw UsageError("name at least one scan: fogline measure SCAN");
  }
  for (const std::string& scan : request.scans) {
    if (scan.empty() || scan == "-") {
      throw UsageError("a scan is read from a file, not from standard input: name the file");
    }
  }
  if (const auto twice = file_named_twice(request.scans)) {
    throw UsageError(*twice + " is given twice: name each scan once");
  }
  if (!request.areas.empty() && request.scans.size() > 1) {
    throw UsageError("--area names pixels of one scan: measure that scan alone");
  }
}

void check_inputs(const MeasureRequest& request) {
  if (request.card && (request.card->empty() || *request.card == "-")) {
    throw UsageError("a roll card is read from a file, not from standard input: name the file");
  }
  if (request.scanner && request.wedge) {
    throw UsageError("--scanner and --wedge are two calibrations: name one");
  }
  if (request.first_step && !request.wedge) {
    throw UsageError("--first goes with --wedge");
  }
  if (request.open.transfer && (request.scanner || request.wedge)) {
    throw UsageError("a calibration says how codes become light: leave --transfer out");
  }
}

void check_not_an_input(const MeasureRequest& request, const std::optional<std::string>& path,
                        const char* option) {
  if (!is_output_file(path)) {
    return;
  }
  if (path->empty()) {
    throw UsageError(std::string(option) + " needs the name of a file");
  }
  for (const std::string& scan : request.scans) {
    if (same_file(*path, scan)) {
      throw UsageError(std::string(option) + " would overwrite the scan " + scan +
                       ": name another file");
    }
  }
  for (const auto& input : {request.card, request.blank, request.scanner, request.wedge}) {
    if (input && same_file(*path, *input)) {
      throw UsageError(std::string(option) + " would overwrite " + *input + ": name another file");
    }
  }
}

struct Output {
  const char* option;
  std::optional<std::string> path;
};

// Standard output is one place too.
void check_two_places(const Output& one, const Output& other) {
  if (one.path && other.path &&
      (*one.path == *other.path || (is_output_file(one.path) && is_output_file(other.path) &&
                                    same_file(*one.path, *other.path)))) {
    throw UsageError(std::string(one.option) + " and " + other.option +
                     " go to one place: name two");
  }
}

}  // namespace

void check_measure(const MeasureRequest& request) {
  check_scans(request);
  check_inputs(request);
  const Output json{"--json", request.json};
  const Output csv{"--csv", request.csv};
  const Output html{"--html", has_page(request) ? request.html : std::nullopt};
  for (const Output& output : {json, csv, html}) {
    check_not_an_input(request, output.path, output.option);
  }
  check_two_places(json, csv);
  check_two_places(json, html);
  check_two_places(csv, html);
}

}  // namespace fogline
