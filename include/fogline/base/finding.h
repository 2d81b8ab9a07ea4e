#pragma once

#include <string>
#include <vector>

namespace fogline {

/// Something said of a roll as a whole: a cause, or a reason for which nothing can be said.
struct Finding {
  /// A word of the report's schema, such as `unfit-scan`.
  std::string code;
  /// A probability that holds, 0 to 1: of findings said at 0.8, 8 in 10 are true.
  double confidence = 0.0;
  /// One sentence for the person at the sink.
  std::string message;
  /// What was seen that speaks for it, a sentence each.
  std::vector<std::string> evidence;
};

}  // namespace fogline
