#pragma once

#include <fogline/process/judge_roll.h>
#include <fogline/process/roll_card.h>
#include <fogline/roll/roll_measurement.h>

#include <optional>
#include <string>

namespace fogline {

/// One roll as it is reported: what the scans say, and what is concluded from it. Every form of
/// report (text, page, JSON) is made from this alone.
struct RollRecord {
  /// Version of the program that measured, such as "0.1.0".
  std::string tool_version;
  RollMeasurement measurement;
  /// Absent where no card was given.
  std::optional<RollCard> card;
  Judgement judgement;
};

}  // namespace fogline
