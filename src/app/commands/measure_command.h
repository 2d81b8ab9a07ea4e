#pragma once

#include "app/command_line/define_command.h"
#include "words/number_text.h"

#include <fogline/pixels/open_scan.h>
#include <fogline/roll/measure_roll.h>

#include <optional>
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
  /// Number of its lightest step in sight.
  std::optional<int> first_step;
  /// Prints the whole report, not its first screen alone.
  bool full = false;
  /// Breaks each doubt up by its sources in print.
  bool budget = false;
  /// The roll card, a TOML file. Absent: none.
  std::optional<std::string> card;
  /// Areas of known exposure.
  std::vector<MarkedArea> areas;
  /// The characteristic curve as a table. Absent: none. "-": standard output.
  std::optional<std::string> csv;
  /// Goes before the card's own aim.
  std::optional<double> aim_contrast_index;
};

Command<MeasureRequest> measure_command();

}  // namespace fogline
