#include "process/causes/unfit_scans.h"

#include <utility>

namespace fogline {
namespace {

// An unfit scan is a fact of the file, not a guess; what is left is the chance that the picture
// was misread as unfit.
constexpr double unfit_confidence = 0.95;

bool tells_no_density(const ScanMeasurement& scan) {
  return scan.fitness == Fitness::unfit || scan.fitness == Fitness::marks_only;
}

std::vector<std::string> evidence_of(const ScanMeasurement& scan) {
  std::vector<std::string> evidence;
  for (const Caution& caution : scan.cautions) {
    if (caution.severity == Severity::unfit) {
      evidence.push_back(scan.info.file + ": " + caution.message);
    }
  }
  if (evidence.empty()) {
    evidence.push_back(scan.info.file + ": no density could be read");
  }
  return evidence;
}

}  // namespace

std::optional<Finding> unfit_finding(const RollMeasurement& roll) {
  Finding unfit{"unfit-scan", unfit_confidence, "", {}};
  std::size_t count = 0;
  for (const ScanMeasurement& scan : roll.scans) {
    if (tells_no_density(scan)) {
      ++count;
      for (std::string& sentence : evidence_of(scan)) {
        unfit.evidence.push_back(std::move(sentence));
      }
    }
  }
  if (count == 0) {
    return std::nullopt;
  }
  unfit.message = count == roll.scans.size()
                      ? "No density can be read from this roll's scans: scan again."
                      : "No density can be read from some of this roll's scans: scan those again.";
  return unfit;
}

}  // namespace fogline
