#pragma once

#include <string>

namespace fogline {

/// How much a caution weighs: a note to read, a caution that widens doubt, or a reason for which
/// the scan is unfit for densities.
enum class Severity { note, caution, unfit };

/// Something the reader of a report must know about one scan. `code` is a stable short slug
/// (`transfer-assumed`), `message` one or two sentences: what was seen and what to do.
struct Caution {
  std::string code;
  Severity severity = Severity::note;
  std::string message;

  friend bool operator==(const Caution&, const Caution&) = default;
};

}  // namespace fogline
