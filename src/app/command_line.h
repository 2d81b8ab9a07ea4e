#pragma once

#include <fogline/io/open_scan.h>
#include <fogline/report/number_text.h>
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
  /// The roll card, a TOML file. Absent: none.
  std::optional<std::string> card;
  /// Goes before the card's own aim.
  std::optional<double> aim_contrast_index;
};

/// `fogline help TOPIC`.
struct HelpRequest {
  /// Empty, "measure", "card" or "scanning".
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
  std::optional<HelpRequest> help;
  std::optional<VersionRequest> version;
};

/// Reads the command line. Opens nothing. Throws UsageError.
Request request_from_arguments(const std::vector<std::string>& arguments);

/// The options of `measure`, as its help lists them.
std::string measure_options_help();

}  // namespace fogline
