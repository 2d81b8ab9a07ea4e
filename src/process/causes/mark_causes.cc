#include "process/causes/mark_causes.h"

#include <algorithm>
#include <array>
#include <cmath>

namespace fogline {

namespace {

constexpr double least_confidence = 0.25;
/// Marks of one scan may share one wrong reason, so that many doubtful ones don't make a sure one.
constexpr double greatest_confidence = 0.97;
/// Every film has some dust: pieces a strip of six frames (230 mm) before it is called dirty
/// (common practice, no source).
constexpr double dirty_from = 8.0;

struct MarkCause {
  Cause cause;
  std::array<MarkKind, 3> kinds;
  /// Expected number below which nothing is said.
  double least_count;
  CauseStatement statement;
  Evidence seen;
  Evidence seen_with_strongest;
};

constexpr std::array<MarkCause, 6> mark_causes{{
    {Cause::drying_marks,
     {MarkKind::drying_mark, MarkKind::drying_mark, MarkKind::drying_mark},
     0.0,
     CauseStatement::drops_dried,
     Evidence::drying_marks,
     Evidence::drying_marks_strongest},
    {Cause::air_bells,
     {MarkKind::air_bell, MarkKind::air_bell, MarkKind::air_bell},
     0.0,
     CauseStatement::air_bells_clung,
     Evidence::air_bells,
     Evidence::air_bells_strongest},
    {Cause::dirty,
     {MarkKind::dust, MarkKind::fibre, MarkKind::dust},
     dirty_from,
     CauseStatement::dirt_lies,
     Evidence::dirt,
     Evidence::dirt_strongest},
    {Cause::scratched,
     {MarkKind::scratch, MarkKind::scratch, MarkKind::scratch},
     0.0,
     CauseStatement::scratched,
     Evidence::scratches,
     Evidence::scratches_strongest},
    {Cause::light_struck,
     {MarkKind::light_leak, MarkKind::light_leak, MarkKind::light_leak},
     0.0,
     CauseStatement::light_struck,
     Evidence::light_struck,
     Evidence::light_struck_strongest},
    {Cause::uneven_development,
     {MarkKind::surge, MarkKind::bromide_drag, MarkKind::low_level},
     0.0,
     CauseStatement::developed_unevenly,
     Evidence::uneven_development,
     Evidence::uneven_development_strongest},
}};

struct Tally {
  double expected = 0.0;
  double none = 1.0;
  int count = 0;
  double greatest_contrast = 0.0;
};

Tally tally_of(const RollMeasurement& roll, const MarkCause& cause) {
  Tally tally;
  for (const ScanMeasurement& scan : roll.scans) {
    for (const Mark& mark : scan.marks) {
      if (std::find(cause.kinds.begin(), cause.kinds.end(), mark.kind) == cause.kinds.end()) {
        continue;
      }
      tally.expected += mark.confidence;
      tally.none *= 1.0 - std::clamp(mark.confidence, 0.0, 1.0);
      ++tally.count;
      tally.greatest_contrast =
          std::max(tally.greatest_contrast, std::abs(mark.contrast_density.value_or(0.0)));
    }
  }
  return tally;
}

/// Probability that a number of independent marks reaches `least`, by the normal limit of the
/// Poisson distribution.
double reaches(double expected, double least) {
  return 0.5 * std::erfc((least - expected) / std::sqrt(2.0 * std::max(expected, 1.0)));
}

double film_strips(const RollMeasurement& roll) {
  std::size_t strips = 0;
  for (const ScanMeasurement& scan : roll.scans) {
    strips += scan.strips.size();
  }
  return std::max(1.0, static_cast<double>(strips));
}

}  // namespace

std::vector<Finding> mark_findings(const RollMeasurement& roll) {
  std::vector<Finding> findings;
  for (const MarkCause& cause : mark_causes) {
    const Tally tally = tally_of(roll, cause);
    if (tally.count == 0) {
      continue;
    }
    const double any = cause.least_count > 0.0
                           ? reaches(tally.expected / film_strips(roll), cause.least_count)
                           : 1.0 - tally.none;
    const double confidence = std::min(greatest_confidence, any);
    if (confidence < least_confidence) {
      continue;
    }
    Finding finding = finding_of(cause.cause, confidence);
    finding.statements.push_back(fact_of(cause.statement));
    if (tally.greatest_contrast > 0.0) {
      finding.evidence.push_back(fact_of(
          cause.seen_with_strongest, {static_cast<double>(tally.count), tally.greatest_contrast}));
    } else {
      finding.evidence.push_back(fact_of(cause.seen, {static_cast<double>(tally.count)}));
    }
    findings.push_back(finding);
  }
  return findings;
}

}  // namespace fogline
