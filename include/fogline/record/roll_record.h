#pragma once

#include <fogline/record/finding.h>
#include <fogline/roll/roll_measurement.h>

#include <string>
#include <vector>

namespace fogline {

/// One roll as it is reported: what the scans say, and what is concluded from it. Every form of
/// report (text, page, JSON) is made from this alone.
struct RollRecord {
  /// Version of the program that measured, such as "0.1.0".
  std::string tool_version;
  RollMeasurement measurement;
  /// Most probable first.
  std::vector<Finding> findings;
};

/// Makes the record of a measured roll. A scan from which no density may be read gives the finding
/// `unfit-scan`, with the scan's own cautions as evidence.
RollRecord record_from_measurement(RollMeasurement measurement, std::string tool_version);

}  // namespace fogline
