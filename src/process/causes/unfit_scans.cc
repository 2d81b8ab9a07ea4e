#include "process/causes/unfit_scans.h"

namespace fogline {
namespace {

// An unfit scan is a fact of the file, not a guess; what is left is the chance that the picture
// was misread as unfit.
constexpr double unfit_confidence = 0.95;

bool tells_no_density(const ScanMeasurement& scan) {
  return scan.fitness == Fitness::unfit || scan.fitness == Fitness::marks_only;
}

void add_unfit(const ScanMeasurement& scan, std::vector<UnfitScan>& unfit_scans) {
  bool told = false;
  for (const Caution& caution : scan.cautions) {
    if (caution.severity == Severity::unfit) {
      unfit_scans.push_back({scan.info.file, caution});
      told = true;
    }
  }
  if (!told) {
    unfit_scans.push_back({scan.info.file, std::nullopt});
  }
}

}  // namespace

std::optional<Finding> unfit_finding(const RollMeasurement& roll) {
  Finding unfit = finding_of(Cause::unfit_scan, unfit_confidence);
  std::size_t count = 0;
  for (const ScanMeasurement& scan : roll.scans) {
    if (tells_no_density(scan)) {
      ++count;
      add_unfit(scan, unfit.unfit_scans);
    }
  }
  if (count == 0) {
    return std::nullopt;
  }
  unfit.statements.push_back(fact_of(count == roll.scans.size()
                                         ? CauseStatement::no_scan_tells_density
                                         : CauseStatement::some_scans_tell_none));
  return unfit;
}

}  // namespace fogline
