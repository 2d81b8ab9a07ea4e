#include "app/commands/calibrate_checks.h"

#include "app/command_line/usage_error.h"
#include "app/commands/option_values.h"
#include "app/commands/option_words.h"

namespace fogline {
namespace {

void check_outputs(const CalibrateRequest& request) {
  if (request.output.empty()) {
    throw UsageError("say where the calibration goes: --output SCANNER.json");
  }
  std::vector<std::string> inputs = request.scans;
  if (request.wedge) {
    inputs.push_back(*request.wedge);
  }
  for (const std::string& input : inputs) {
    if (input.empty() || input == "-") {
      throw UsageError("scans and references are read from files: name them");
    }
    for (const std::string& output :
         {request.output, request.html.value_or(std::string(no_page))}) {
      if (output != "-" && output != no_page && same_file(output, input)) {
        throw UsageError("the result would overwrite " + input + ": name another file");
      }
    }
  }
  if (request.html && *request.html != no_page &&
      (*request.html == request.output || (*request.html != "-" && request.output != "-" &&
                                           same_file(*request.html, request.output)))) {
    throw UsageError("--output and --html go to one place: name two");
  }
}

void check_numbers(const CalibrateRequest& request) {
  const std::size_t scans = request.scans.size();
  if ((request.wedge || request.steps) && scans != 1) {
    throw UsageError("a wedge is calibrated from one scan: name one");
  }
  if (request.layers && scans != 1 && scans != request.layers->size()) {
    throw UsageError("--layers names " + std::to_string(request.layers->size()) +
                     " numbers of layers for " + std::to_string(scans) +
                     " scans: name one a scan, or one scan that shows all");
  }
  if (request.bracket_s && scans != request.bracket_s->size()) {
    throw UsageError("--bracket names " + std::to_string(request.bracket_s->size()) +
                     " times for " + std::to_string(scans) + " pictures: name one a picture");
  }
  if (request.first_step && !request.wedge && !request.steps) {
    throw UsageError("--first goes with --wedge or --steps");
  }
  if (request.layer_density && !request.layers) {
    throw UsageError("--layer-density goes with --layers");
  }
}

}  // namespace

void check_calibrate(const CalibrateRequest& request) {
  if (request.scans.empty()) {
    throw UsageError("name a scan: fogline calibrate SCAN --wedge REF.csv --output SCANNER.json");
  }
  const int ways = (request.wedge ? 1 : 0) + (request.steps ? 1 : 0) + (request.layers ? 1 : 0) +
                   (request.bracket_s ? 1 : 0);
  if (ways != 1) {
    throw UsageError(
        "say what the scans show, in one way: --wedge, --steps, --layers or --bracket");
  }
  if (const auto twice = file_named_twice(request.scans)) {
    throw UsageError(*twice + " is given twice: name each scan once");
  }
  check_outputs(request);
  check_numbers(request);
}

}  // namespace fogline
