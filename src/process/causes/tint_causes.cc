#include "process/causes/tint_causes.h"

#include <algorithm>

namespace fogline {

namespace {

constexpr double least_confidence = 0.1;

struct TintCause {
  Cause cause;
  CauseStatement statement;
  Evidence seen;
};

constexpr TintCause dye{Cause::dye_left, CauseStatement::dye_left, Evidence::coloured_veil};
constexpr TintCause haze{Cause::fixing_incomplete, CauseStatement::looks_milky,
                         Evidence::milky_veil};
constexpr TintCause stain{Cause::stained, CauseStatement::stained_yellow, Evidence::yellow_veil};
constexpr TintCause image_stain{Cause::stained, CauseStatement::stained_with_silver,
                                Evidence::stain_with_silver};

const TintCause* cause_of(TintKind kind) {
  switch (kind) {
    case TintKind::dye_left:
    case TintKind::sensitising_dye:
    case TintKind::antihalation_dye:
      return &dye;
    case TintKind::fixer_haze:
      return &haze;
    case TintKind::yellow_stain:
      return &stain;
    case TintKind::image_stain:
      return &image_stain;
    case TintKind::none:
      break;
  }
  return nullptr;
}

Finding finding_of(const TintComponent& component, const TintCause& cause, bool may_be_stock) {
  Finding finding = finding_of(cause.cause, component.confidence);
  finding.statements.push_back(fact_of(cause.statement));
  if (may_be_stock && component.kind != TintKind::image_stain) {
    finding.statements.push_back(fact_of(CauseStatement::perhaps_stocks_own));
  }
  finding.evidence.push_back(fact_of(cause.seen, {component.density.value, component.density.u95}));
  return finding;
}

}  // namespace

std::vector<Finding> tint_findings(const RollMeasurement& roll) {
  std::vector<Finding> findings;
  for (const ScanMeasurement& scan : roll.scans) {
    for (const TintComponent& component : scan.tint.components) {
      const TintCause* cause = cause_of(component.kind);
      if (cause == nullptr || component.confidence < least_confidence) {
        continue;
      }
      const Finding finding = finding_of(component, *cause, scan.tint.may_be_stock);
      const auto same = std::find_if(findings.begin(), findings.end(), [&](const Finding& other) {
        return other.cause == finding.cause;
      });
      if (same == findings.end()) {
        findings.push_back(finding);
      } else if (finding.confidence > same->confidence) {
        *same = finding;
      }
    }
  }
  return findings;
}

}  // namespace fogline
