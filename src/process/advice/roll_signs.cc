#include "process/advice/roll_signs.h"

#include <algorithm>
#include <initializer_list>

namespace fogline {
namespace {

double greatest_of(const std::vector<Finding>& findings,
                   std::initializer_list<std::string_view> codes) {
  double greatest = 0.0;
  for (const std::string_view code : codes) {
    greatest = std::max(greatest, confidence_of(findings, code));
  }
  return greatest;
}

void add_component(const TintComponent& component, RollSigns& signs) {
  const auto raise = [&](double& sign) { sign = std::max(sign, component.confidence); };
  switch (component.kind) {
    case TintKind::dye_left:
    case TintKind::sensitising_dye:
    case TintKind::antihalation_dye:
      raise(signs.dye_left);
      break;
    case TintKind::fixer_haze:
      raise(signs.fixer_haze);
      break;
    case TintKind::yellow_stain:
      raise(signs.stained);
      break;
    case TintKind::image_stain:
      raise(signs.image_stain);
      break;
    case TintKind::none:
      break;
  }
}

}  // namespace

double confidence_of(const std::vector<Finding>& findings, std::string_view code) {
  double greatest = 0.0;
  for (const Finding& finding : findings) {
    if (finding.code == code) {
      greatest = std::max(greatest, finding.confidence);
    }
  }
  return greatest;
}

RollSigns read_roll_signs(const RollMeasurement& roll, const std::vector<Finding>& findings) {
  RollSigns signs;
  signs.dye_left = confidence_of(findings, "dye-left");
  signs.fixer_haze = confidence_of(findings, "fixing-incomplete");
  signs.stained = confidence_of(findings, "stained");
  signs.drying_marks = confidence_of(findings, "drying-marks");
  signs.dirty = confidence_of(findings, "dirty");
  signs.past_mending =
      greatest_of(findings, {"scratched", "air-bells", "uneven-development", "light-struck"});
  signs.silver_off = greatest_of(
      findings, {"under-exposed", "over-exposed", "under-developed", "over-developed", "fogged"});
  signs.not_exposed = confidence_of(findings, "not-exposed");
  signs.not_developed = confidence_of(findings, "not-developed");
  signs.weak_developer = confidence_of(findings, "weak-developer");
  for (const ScanMeasurement& scan : roll.scans) {
    for (const TintComponent& component : scan.tint.components) {
      add_component(component, signs);
    }
    const bool coloured = scan.tint.kind && *scan.tint.kind != TintKind::none;
    signs.tint_may_be_stock = signs.tint_may_be_stock || (coloured && scan.tint.may_be_stock);
    signs.tint_seen_clean = signs.tint_seen_clean || scan.tint.kind == TintKind::none;
  }
  return signs;
}

}  // namespace fogline
