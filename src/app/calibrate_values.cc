#include "calibrate_values.h"

#include "film/wedges/find_wedges.h"

#include <algorithm>
#include <charconv>
#include <filesystem>

namespace fogline {
namespace {

constexpr double least_step_density = 0.02;
constexpr double greatest_step_density = 1.0;
constexpr int most_layers = 60;
constexpr double longest_time_s = 3600.0;
constexpr double greatest_layer_density = 2.0;
constexpr double greatest_doubt_stops = 1.0;

template <typename Number>
bool read_whole(std::string_view text, Number& number) {
  const auto [end, error] = std::from_chars(text.data(), text.data() + text.size(), number);
  return error == std::errc() && end == text.data() + text.size();
}

std::vector<std::string> parts_of(const std::string& text, char separator) {
  std::vector<std::string> parts;
  std::size_t begin = 0;
  while (begin <= text.size()) {
    const std::size_t end = std::min(text.find(separator, begin), text.size());
    parts.push_back(text.substr(begin, end - begin));
    begin = end + 1;
  }
  return parts;
}

/// One of the times that `--bracket` lists.
double listed_time(const std::string& listed, const std::string& all) {
  const std::vector<std::string> parts = parts_of(listed, '/');
  double numerator = 0.0;
  double denominator = 1.0;
  const bool read = parts.size() <= 2 && read_whole(parts[0], numerator) &&
                    (parts.size() < 2 || read_whole(parts[1], denominator));
  const double time_s = numerator / denominator;
  if (!read || !(denominator > 0.0) || !(time_s > 0.0 && time_s <= longest_time_s)) {
    throw UsageError(
        "--bracket is a list of shutter times in seconds, such as 1/125,1/60,0.5, not "
        "\"" +
        all + "\"");
  }
  return time_s;
}

double positive_from_text(const std::string& text, double greatest, const char* what) {
  double value = 0.0;
  if (!read_whole(text, value) || !(value > 0.0 && value <= greatest)) {
    throw UsageError(std::string(what) + ", not \"" + text + "\"");
  }
  return value;
}

bool same_file(const std::string& a, const std::string& b) {
  std::error_code none;
  return std::filesystem::path(a).lexically_normal() ==
             std::filesystem::path(b).lexically_normal() ||
         std::filesystem::equivalent(a, b, none);
}

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
    for (const std::string& output : {request.output, request.html.value_or("none")}) {
      if (output != "-" && output != "none" && same_file(output, input)) {
        throw UsageError("the result would overwrite " + input + ": name another file");
      }
    }
  }
  if (request.html && *request.html != "none" &&
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
  if (request.layer_density && !request.layers) {
    throw UsageError("--layer-density goes with --layers");
  }
}

}  // namespace

WedgeReference nominal_wedge_from_text(const std::string& text) {
  const std::vector<std::string> parts = parts_of(text, 'x');
  int steps = 0;
  double density = 0.0;
  if (parts.size() != 2 || !read_whole(parts[0], steps) || !read_whole(parts[1], density) ||
      steps < fewest_wedge_steps || steps > most_wedge_steps ||
      !(density >= least_step_density && density <= greatest_step_density)) {
    throw UsageError(
        "--steps is a number of steps (5 to 41) and the density of one (0.02 to 1), "
        "such as 21x0.15, not \"" +
        text + "\"");
  }
  return nominal_wedge(steps, density);
}

std::vector<int> layers_from_text(const std::string& text) {
  std::vector<int> layers;
  for (const std::string& part : parts_of(text, ',')) {
    int count = 0;
    if (!read_whole(part, count) || count < 0 || count > most_layers ||
        std::find(layers.begin(), layers.end(), count) != layers.end()) {
      throw UsageError(
          "--layers is a list of different numbers of layers, such as 0,1,2,3,5, not "
          "\"" +
          text + "\"");
    }
    layers.push_back(count);
  }
  return layers;
}

std::vector<double> times_from_text(const std::string& text) {
  std::vector<double> times;
  for (const std::string& time : parts_of(text, ',')) {
    times.push_back(listed_time(time, text));
  }
  return times;
}

double layer_density_from_text(const std::string& text) {
  return positive_from_text(text, greatest_layer_density,
                            "--layer-density is the density of one layer, above 0 to 2");
}

double doubt_stops_from_text(const std::string& text) {
  return positive_from_text(text, greatest_doubt_stops,
                            "--bracket-doubt is a doubt in stops, above 0 to 1");
}

ScannerDevice device_from_text(const std::string& text) {
  if (text == "flatbed") {
    return ScannerDevice::flatbed;
  }
  if (text == "film-scanner") {
    return ScannerDevice::film_scanner;
  }
  if (text == "camera") {
    return ScannerDevice::camera;
  }
  throw UsageError("--device is flatbed, film-scanner or camera, not \"" + text + "\"");
}

std::string date_from_text(const std::string& text) {
  constexpr std::string_view pattern = "dddd-dd-dd";
  bool fits = text.size() == pattern.size();
  for (std::size_t i = 0; fits && i < text.size(); ++i) {
    fits = pattern[i] == 'd' ? text[i] >= '0' && text[i] <= '9' : text[i] == '-';
  }
  if (!fits) {
    throw UsageError("--date is a date such as 2026-11-26, not \"" + text + "\"");
  }
  return text;
}

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
  for (std::size_t i = 0; i < request.scans.size(); ++i) {
    for (std::size_t j = 0; j < i; ++j) {
      if (same_file(request.scans[i], request.scans[j])) {
        throw UsageError(request.scans[i] + " is given twice: name each scan once");
      }
    }
  }
  check_outputs(request);
  check_numbers(request);
}

}  // namespace fogline
