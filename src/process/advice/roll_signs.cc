#include "process/advice/roll_signs.h"

#include <algorithm>
#include <initializer_list>

namespace fogline {
namespace {

double greatest_of(const std::vector<Finding>& findings, std::initializer_list<Cause> causes) {
  double greatest = 0.0;
  for (const Cause cause : causes) {
    greatest = std::max(greatest, confidence_of(findings, cause));
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

double confidence_of(const std::vector<Finding>& findings, Cause cause) {
  double greatest = 0.0;
  for (const Finding& finding : findings) {
    if (finding.cause == cause) {
      greatest = std::max(greatest, finding.confidence);
    }
  }
  return greatest;
}

RollSigns read_roll_signs(const RollMeasurement& roll, const std::vector<Finding>& findings) {
  RollSigns signs;
  signs.dye_left = confidence_of(findings, Cause::dye_left);
  signs.fixer_haze = confidence_of(findings, Cause::fixing_incomplete);
  signs.stained = confidence_of(findings, Cause::stained);
  signs.drying_marks = confidence_of(findings, Cause::drying_marks);
  signs.dirty = confidence_of(findings, Cause::dirty);
  signs.past_mending = greatest_of(findings, {Cause::scratched, Cause::air_bells,
                                              Cause::uneven_development, Cause::light_struck});
  signs.silver_off =
      greatest_of(findings, {Cause::under_exposed, Cause::over_exposed, Cause::under_developed,
                             Cause::over_developed, Cause::fogged});
  signs.not_exposed = confidence_of(findings, Cause::not_exposed);
  signs.not_developed = confidence_of(findings, Cause::not_developed);
  signs.weak_developer = confidence_of(findings, Cause::weak_developer);
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
