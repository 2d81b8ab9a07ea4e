#pragma once

#include "words/number_text.h"

#include <fogline/density/wedge_reference.h>
#include <fogline/pixels/open_scan.h>
#include <fogline/roll/calibrate_scanner.h>
#include <fogline/roll/measure_roll.h>

#include <optional>
#include <stdexcept>
#include <string>
#include <vector>

namespace fogline {

/// `fogline measure`, as asked for.
struct MeasureRequest {
  std::vector<std::string> scans;
  /// Absent: no JSON. "-": standard output.
  std::optional<std::string> json;
  /// Absent: beside the first scan. "-": standard output. "none": no page.
  std::optional<std::string> html;
  DensityUnits units = DensityUnits::density;
  OpenOptions open;
  MeasureOptions measure;
  /// A picture of the bare light, same settings and size as the scans. Absent: none.
  std::optional<std::string> blank;
  /// The scanner's calibration file. Absent: none.
  std::optional<std::string> scanner;
  /// Reference of a step wedge in the scans. Absent: none.
  std::optional<std::string> wedge;
  /// Breaks each doubt up by its sources in print.
  bool budget = false;
  /// Prints the whole report instead of one screen of it.
  bool full = false;
  /// The roll card, a TOML file. Absent: none.
  std::optional<std::string> card;
  /// Areas of known exposure.
  std::vector<MarkedArea> areas;
  /// The characteristic curve as a table. Absent: none. "-": standard output.
  std::optional<std::string> csv;
  /// Goes before the card's own aim.
  std::optional<double> aim_contrast_index;
};

/// `fogline calibrate`, as asked for: one of wedge, steps, layers, bracket is set.
struct CalibrateRequest {
  std::vector<std::string> scans;
  /// Where the scanner file goes; "-": standard output.
  std::string output;
  /// Absent: beside the output (or the first scan). "-": standard output. "none": no page.
  std::optional<std::string> html;
  OpenOptions open;
  std::optional<std::string> wedge;
  std::optional<WedgeReference> steps;
  std::optional<std::vector<int>> layers;
  std::optional<double> layer_density;
  std::optional<std::vector<double>> bracket_s;
  double bracket_doubt_stops = usual_shutter_doubt_stops;
  ScannerDevice device = ScannerDevice::unknown;
  /// ISO 8601. Absent: today's.
  std::optional<std::string> date;
};

/// `fogline help TOPIC`.
struct HelpRequest {
  /// Empty, "measure", "calibrate", "card" or "scanning".
  std::string topic;
};

struct VersionRequest {};

/// Wrong use: the message is one sentence, without the program's name.
class UsageError : public std::runtime_error {
 public:
  using std::runtime_error::runtime_error;
};

/// What the command line asks for; exactly one is set.
struct Request {
  std::optional<MeasureRequest> measure;
  std::optional<CalibrateRequest> calibrate;
  std::optional<HelpRequest> help;
  std::optional<VersionRequest> version;
};

/// Reads the command line. Opens nothing. Throws UsageError.
Request request_from_arguments(const std::vector<std::string>& arguments);

/// The options of `measure` and of `calibrate`, as their help lists them.
std::string measure_options_help();
std::string calibrate_options_help();

}  // namespace fogline
