#pragma once

#include <fogline/base/cause.h>
#include <fogline/base/caution.h>
#include <fogline/process/cause_statement.h>
#include <fogline/process/evidence.h>
#include <fogline/process/further_measurement.h>

#include <optional>
#include <string>
#include <vector>

namespace fogline {

/// A scan that tells no density, and which of its cautions says so.
struct UnfitScan {
  std::string file;
  /// Absent where none does.
  std::optional<Caution> caution;

  friend bool operator==(const UnfitScan&, const UnfitScan&) = default;
};

/// Something said of a roll as a whole: a cause, or a reason for which nothing can be said.
struct Finding {
  Cause cause = Cause::normal;
  /// A probability that holds, 0 to 1: of findings said at 0.8, 8 in 10 are true.
  double confidence = 0.0;
  /// What is stated, in the order in which it is said.
  std::vector<Fact<CauseStatement>> statements;
  /// What was seen that speaks for it.
  std::vector<Fact<Evidence>> evidence;
  /// Of `unfit-scan`: its evidence, one for each caution.
  std::vector<UnfitScan> unfit_scans;
  /// Where the cause stays open: what would tell most.
  std::optional<FurtherMeasurement> would_tell_most;

  friend bool operator==(const Finding&, const Finding&) = default;
};

/// A finding of which nothing is stated yet.
inline Finding finding_of(Cause cause, double confidence) {
  Finding finding;
  finding.cause = cause;
  finding.confidence = confidence;
  return finding;
}

}  // namespace fogline
