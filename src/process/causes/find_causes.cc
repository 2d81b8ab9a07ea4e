#include "process/causes/find_causes.h"

#include "process/advice/film_state.h"
#include "process/causes/exposure_causes.h"
#include "process/causes/fog_cause.h"
#include "process/causes/mark_causes.h"
#include "process/causes/tint_causes.h"
#include "process/causes/unfit_scans.h"
#include "process/own_process_film.h"

#include <algorithm>
#include <iterator>

namespace fogline {

namespace {

void append(std::vector<Finding>& findings, std::vector<Finding> more) {
  std::move(more.begin(), more.end(), std::back_inserter(findings));
}

}  // namespace

std::vector<Finding> find_causes(const RollMeasurement& roll, const LightOrTime& light_or_time,
                                 const Aim& aim, const RollPopulation& population,
                                 const RollCard* card) {
  const LightSigns signs = gather_light_signs(roll);
  std::vector<Finding> findings;
  const bool silver = !why_own_process(roll, card);
  append(findings, exposure_findings(light_or_time, signs, aim, population));
  if (silver) {
    append(findings, film_state_findings(signs));
  }
  append(findings, tint_findings(roll));
  append(findings, mark_findings(roll));
  if (const auto fog = fog_finding(roll, signs, population, card); fog && silver) {
    findings.push_back(*fog);
  }
  if (const auto unfit = unfit_finding(roll)) {
    findings.push_back(*unfit);
  }
  std::stable_sort(findings.begin(), findings.end(),
                   [](const Finding& a, const Finding& b) { return a.confidence > b.confidence; });
  return findings;
}

}  // namespace fogline
