#pragma once

#include <fogline/process/judge_roll.h>

#include <string>

namespace fogline {

/// One roll as it is reported. Every form of report (text, page, JSON) is made from this alone.
struct RollRecord : JudgedRoll {
  /// Version of the program that measured, such as "0.1.0".
  std::string tool_version;

  friend bool operator==(const RollRecord&, const RollRecord&) = default;
};

}  // namespace fogline
