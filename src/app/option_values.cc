#include "option_values.h"

#include <algorithm>
#include <charconv>
#include <cmath>
#include <filesystem>
#include <vector>

namespace fogline {
namespace {

namespace fs = std::filesystem;

// Exponents of tone curves in use run from 1 (linear) to about 3; beyond these bounds a number is
// a slip of the hand.
constexpr double least_power = 0.3;
constexpr double greatest_power = 5.0;

// From the smallest subminiature frame to a panorama of the longest camera on roll film.
constexpr double least_frame_mm = 8.0;
constexpr double greatest_frame_mm = 250.0;

// Below the softest and above the hardest negative that any paper takes.
constexpr double least_contrast_index = 0.2;
constexpr double greatest_contrast_index = 1.5;

std::optional<double> number_from_text(const std::string& text) {
  double value = 0.0;
  const auto [end, error] = std::from_chars(text.data(), text.data() + text.size(), value);
  if (error != std::errc() || end != text.data() + text.size()) {
    return std::nullopt;
  }
  return value;
}

bool is_output_file(const std::optional<std::string>& path) {
  return path && *path != "-";
}

bool same_file(const std::string& a, const std::string& b) {
  std::error_code none;
  return fs::path(a).lexically_normal() == fs::path(b).lexically_normal() ||
         fs::equivalent(a, b, none);
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

void check_card(const MeasureRequest& request) {
  if (request.card && (request.card->empty() || *request.card == "-")) {
    throw UsageError("a roll card is read from a file, not from standard input: name the file");
  }
}

}  // namespace

DensityUnits units_from_text(const std::string& text) {
  if (text == "density") {
    return DensityUnits::density;
  }
  if (text == "stops") {
    return DensityUnits::stops;
  }
  throw UsageError("--units is density or stops, not \"" + text + "\"");
}

std::optional<Transfer> transfer_from_text(const std::string& text) {
  if (text == "auto") {
    return std::nullopt;
  }
  Transfer transfer;
  transfer.source = TransferSource::option;
  if (text == "linear") {
    transfer.kind = TransferKind::linear;
    return transfer;
  }
  if (text == "srgb") {
    transfer.kind = TransferKind::srgb;
    return transfer;
  }
  const auto power = number_from_text(text);
  if (!power || !(*power >= least_power && *power <= greatest_power)) {
    throw UsageError("--transfer is auto, linear, srgb or a power from 0.3 to 5, not \"" + text +
                     "\"");
  }
  transfer.kind = TransferKind::power;
  transfer.exponent = *power;
  return transfer;
}

std::optional<FilmFormat> format_from_text(const std::string& text) {
  if (text == "auto") {
    return std::nullopt;
  }
  if (text == "135") {
    return FilmFormat::f135;
  }
  if (text == "120") {
    return FilmFormat::f120;
  }
  if (text == "sheet") {
    return FilmFormat::sheet;
  }
  throw UsageError("--format is auto, 135, 120 or sheet, not \"" + text + "\"");
}

double frame_mm_from_text(const std::string& text) {
  const auto length = number_from_text(text);
  if (!length || !(*length >= least_frame_mm && *length <= greatest_frame_mm)) {
    throw UsageError("--frame-mm is a length from 8 to 250 millimetres, not \"" + text + "\"");
  }
  return *length;
}

double contrast_index_from_text(const std::string& text) {
  const auto index = number_from_text(text);
  if (!index || !(*index >= least_contrast_index && *index <= greatest_contrast_index)) {
    throw UsageError("--aim-contrast-index is a contrast index from 0.2 to 1.5, not \"" + text +
                     "\"");
  }
  return *index;
}

MarkedArea area_from_text(const std::string& text) {
  constexpr double most_stops = 20.0;
  const std::size_t sign = text.find('=');
  std::vector<double> numbers;
  std::size_t begin = 0;
  while (sign != std::string::npos && begin <= sign) {
    const std::size_t end = std::min(text.find(',', begin), sign);
    numbers.push_back(number_from_text(text.substr(begin, end - begin)).value_or(NAN));
    begin = end + 1;
  }
  const auto stops =
      sign == std::string::npos
          ? std::nullopt
          : number_from_text(text.substr(text[sign + 1] == '+' ? sign + 2 : sign + 1));
  constexpr std::size_t sides = 4;
  const bool whole = numbers.size() == sides && numbers[0] >= 0.0 && numbers[1] >= 0.0 &&
                     numbers[2] > 0.0 && numbers[3] > 0.0 && stops &&
                     std::abs(*stops) <= most_stops;
  if (!whole) {
    throw UsageError("--area " + text +
                     " must be x,y,width,height=STOPS, in pixels and stops, such as "
                     "--area 1200,300,80,80=-2");
  }
  return {{numbers[0], numbers[1], numbers[2], numbers[3]}, *stops};
}

ClearReference clear_from_text(const std::string& text) {
  if (text == "auto") {
    return ClearReference::automatic;
  }
  if (text == "holes") {
    return ClearReference::holes;
  }
  if (text == "gap") {
    return ClearReference::gap;
  }
  if (text == "none") {
    return ClearReference::none;
  }
  throw UsageError("--clear is auto, holes, gap or none, not \"" + text + "\"");
}

void check_files(const MeasureRequest& request) {
  if (request.scans.empty()) {
    throw UsageError("name at least one scan: fogline measure SCAN");
  }
  for (std::size_t i = 0; i < request.scans.size(); ++i) {
    if (request.scans[i].empty() || request.scans[i] == "-") {
      throw UsageError("a scan is read from a file, not from standard input: name the file");
    }
    for (std::size_t j = 0; j < i; ++j) {
      if (same_file(request.scans[i], request.scans[j])) {
        throw UsageError(request.scans[i] + " is given twice: name each scan once");
      }
    }
  }
  check_card(request);
  if (request.scanner && request.wedge) {
    throw UsageError("--scanner and --wedge are two calibrations: name one");
  }
  if (request.open.transfer && (request.scanner || request.wedge)) {
    throw UsageError("a calibration says how codes become light: leave --transfer out");
  }
  check_not_an_input(request, request.json, "--json");
  check_not_an_input(request, request.csv, "--csv");
  if (!request.areas.empty() && request.scans.size() > 1) {
    throw UsageError("--area names pixels of one scan: measure that scan alone");
  }
  if (request.csv && request.json && *request.csv == *request.json) {
    throw UsageError("--json and --csv go to one place: name two");
  }
  const bool has_page = !request.html || *request.html != "none";
  if (has_page) {
    check_not_an_input(request, request.html, "--html");
  }
  if (request.json && request.html && has_page &&
      (*request.json == *request.html ||
       (is_output_file(request.json) && is_output_file(request.html) &&
        same_file(*request.json, *request.html)))) {
    throw UsageError("--json and --html go to one place: name two");
  }
}

}  // namespace fogline
