#include "process/causes/exposure_causes.h"

#include "process/causes/light_evidence.h"

#include <cmath>
#include <utility>

namespace fogline {

namespace {

constexpr double least_confidence = 0.1;
/// From this on a cause is said as the verdict; below it the finding states that it can't be told.
constexpr double told = 0.5;

Fact<CauseStatement> light_statement(const LightOrTime& weighed) {
  const Quantity& stops = *weighed.exposure_stops;
  return fact_of(stops.value < 0.0 ? CauseStatement::light_short : CauseStatement::light_plentiful,
                 {std::abs(stops.value), stops.u95});
}

Fact<CauseStatement> contrast_statement(CauseStatement kind, const LightOrTime& weighed,
                                        const Aim& aim) {
  return fact_of(kind,
                 {weighed.contrast_index->value, weighed.contrast_index->u95, aim.contrast_index});
}

bool light_is_off(const LightOrTime& weighed, const RollPopulation& population) {
  return weighed.exposure_stops &&
         std::abs(weighed.exposure_stops->value) > population.exposure_latitude_stops;
}

/// What is said of a cause that is told: it, and what else is off where both are.
std::vector<Fact<CauseStatement>> verdict(Cause cause, const LightOrTime& weighed, const Aim& aim,
                                          const RollPopulation& population) {
  const double off = weighed.contrast_index->value - aim.contrast_index;
  if (cause == Cause::normal) {
    return {contrast_statement(weighed.exposure_stops ? CauseStatement::light_and_development_right
                                                      : CauseStatement::development_right,
                               weighed, aim)};
  }
  std::vector<Fact<CauseStatement>> said;
  if (cause == Cause::under_exposed || cause == Cause::over_exposed) {
    said.push_back(light_statement(weighed));
    if (std::abs(off) > aim.tolerance) {
      said.push_back(contrast_statement(
          off < 0.0 ? CauseStatement::development_short : CauseStatement::development_long, weighed,
          aim));
    }
    return said;
  }
  said.push_back(contrast_statement(cause == Cause::under_developed
                                        ? CauseStatement::development_short
                                        : CauseStatement::development_long,
                                    weighed, aim));
  if (light_is_off(weighed, population)) {
    said.push_back(light_statement(weighed));
  }
  return said;
}

CauseStatement perhaps(Cause cause) {
  switch (cause) {
    case Cause::under_exposed:
      return CauseStatement::perhaps_too_little_light;
    case Cause::over_exposed:
      return CauseStatement::perhaps_too_much_light;
    case Cause::under_developed:
      return CauseStatement::perhaps_too_little_development;
    case Cause::over_developed:
      return CauseStatement::perhaps_too_much_development;
    default:
      return CauseStatement::perhaps_right;
  }
}

/// Probability that an under-developed roll's developer was weak, from how grey its leader is: a
/// short development leaves it in proportion to contrast, an exhausted developer starves it.
double weak_given_short(const LightOrTime& weighed, const LightSigns& signs, const Aim& aim,
                        const RollPopulation& population) {
  if (!signs.leader || signs.leader->at_least) {
    return 0.0;
  }
  constexpr std::size_t usual = 1;  // of the low, the usual and the high maximum density
  const double short_density =
      population.maximum_densities[usual] * weighed.contrast_index->value / aim.contrast_index;
  const auto likelihood = [&](double mean, double sd) {
    const double deviation = (signs.leader->density - mean) / sd;
    return std::exp(-0.5 * deviation * deviation) / sd;
  };
  const double weak = population.weak_share *
                      likelihood(population.weak_leader_density, population.weak_leader_sd_density);
  const double just_short = (1.0 - population.weak_share) *
                            likelihood(short_density, population.leader_sd_share * short_density);
  return weak / (weak + just_short);
}

Finding weak_developer(double confidence, const LightSigns& signs,
                       const RollPopulation& population) {
  Finding finding = finding_of(Cause::weak_developer, confidence);
  finding.statements.push_back(fact_of(confidence >= told
                                           ? CauseStatement::developer_weak
                                           : CauseStatement::perhaps_developer_weak));
  finding.evidence.push_back(
      fact_of(Evidence::leader_starved, {signs.leader->density, population.black_leader_density}));
  return finding;
}

}  // namespace

std::vector<Finding> exposure_findings(const LightOrTime& light_or_time, const LightSigns& signs,
                                       const Aim& aim, const RollPopulation& population) {
  std::vector<Finding> findings;
  if (!light_or_time.judged()) {
    return findings;
  }
  const CauseProbabilities& causes = *light_or_time.causes;
  const double weak =
      causes.under_developed * weak_given_short(light_or_time, signs, aim, population);
  const bool weak_said = weak >= least_confidence;
  const auto add = [&](Cause cause, double confidence) {
    if (confidence < least_confidence) {
      return;
    }
    Finding finding = finding_of(cause, confidence);
    finding.evidence = light_or_time.evidence;
    if (confidence >= told) {
      finding.statements = verdict(cause, light_or_time, aim, population);
    } else {
      finding.statements.push_back(fact_of(perhaps(cause), {confidence}));
      finding.would_tell_most = light_or_time.would_tell_most;
    }
    findings.push_back(std::move(finding));
  };
  add(Cause::normal, causes.normal);
  add(Cause::under_exposed, causes.under_exposed);
  add(Cause::over_exposed, causes.over_exposed);
  add(Cause::under_developed, causes.under_developed - (weak_said ? weak : 0.0));
  add(Cause::over_developed, causes.over_developed);
  if (weak_said) {
    findings.push_back(weak_developer(weak, signs, population));
  }
  return findings;
}

}  // namespace fogline
