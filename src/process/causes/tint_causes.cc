#include "process/causes/tint_causes.h"

#include "process/advice/spoken_numbers.h"

#include <algorithm>
#include <array>
#include <string>

namespace fogline {

namespace {

constexpr double least_confidence = 0.1;

struct TintCause {
  const char* code;
  const char* message;
  const char* colour;
};

constexpr TintCause dye{"dye-left", "Dye is left in the film.", "Coloured veil of the clear film"};
constexpr TintCause haze{"fixing-incomplete",
                         "The film looks milky, as where fixing is incomplete: look at it by "
                         "reflected light on black.",
                         "Milky veil of the clear film"};
constexpr TintCause stain{"stained", "The clear film is stained yellow.",
                          "Yellow veil of the clear film"};
constexpr TintCause image_stain{"stained",
                                "A stain grows with the silver: a staining developer leaves it, "
                                "and it is no fault.",
                                "Blue density gained at a silver density of 1"};

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
  Finding finding{cause.code, component.confidence, cause.message, {}};
  if (may_be_stock && component.kind != TintKind::image_stain) {
    finding.message += " It may be the stock's own colour: its clean base isn't known yet.";
  }
  finding.evidence.push_back(std::string(cause.colour) + ": " +
                             fixed_text(component.density.value, 3) + " ± " +
                             fixed_text(component.density.u95, 3) + ".");
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
        return other.code == finding.code;
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
