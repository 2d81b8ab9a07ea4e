#pragma once

#include "app/command_line/define_command.h"

#include <fogline/density/scanner_calibration.h>
#include <fogline/pixels/open_scan.h>
#include <fogline/roll/calibrate_scanner.h>

#include <optional>
#include <string>
#include <vector>

namespace fogline {

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
  /// Number of the wedge's lightest step in sight.
  std::optional<int> first_step;
  std::optional<std::vector<int>> layers;
  std::optional<double> layer_density;
  std::optional<std::vector<double>> bracket_s;
  double bracket_doubt_stops = usual_shutter_doubt_stops;
  ScannerDevice device = ScannerDevice::unknown;
  /// ISO 8601. Absent: today's.
  std::optional<std::string> date;
};

Command<CalibrateRequest> calibrate_command();

}  // namespace fogline
