#include "process/causes/exposure_causes.h"

#include "process/advice/spoken_numbers.h"

#include <cmath>
#include <string>

namespace fogline {

namespace {

constexpr double least_confidence = 0.1;
/// From this on a cause is said as the verdict; below it the sentence says that it can't be told.
constexpr double told = 0.5;

std::string light_text(const LightOrTime& weighed) {
  const Quantity& stops = *weighed.exposure_stops;
  return std::string(stops.value < 0.0 ? "short" : "plenty") + " by about " +
         fixed_text(std::abs(stops.value), 1) + " ± " + fixed_text(stops.u95, 1) + " stops";
}

std::string contrast_text(const LightOrTime& weighed, const Aim& aim) {
  return "contrast index about " + fixed_text(weighed.contrast_index->value, 2) + " ± " +
         fixed_text(weighed.contrast_index->u95, 2) + ", where " +
         fixed_text(aim.contrast_index, 2) + " is the aim";
}

bool light_is_off(const LightOrTime& weighed, const RollPopulation& population) {
  return weighed.exposure_stops &&
         std::abs(weighed.exposure_stops->value) > population.exposure_latitude_stops;
}

bool time_is_off(const LightOrTime& weighed, const Aim& aim) {
  return std::abs(weighed.contrast_index->value - aim.contrast_index) > aim.tolerance;
}

/// What else is off, for rolls on which both are.
std::string other_light(const LightOrTime& weighed, const RollPopulation& population) {
  return light_is_off(weighed, population) ? " Light was " + light_text(weighed) + "." : "";
}

std::string other_time(const LightOrTime& weighed, const Aim& aim) {
  if (!time_is_off(weighed, aim)) {
    return "";
  }
  return std::string(" Development was ") +
         (weighed.contrast_index->value < aim.contrast_index ? "short" : "long") + ": " +
         contrast_text(weighed, aim) + ".";
}

std::string verdict(const std::string& code, const LightOrTime& weighed, const Aim& aim,
                    const RollPopulation& population) {
  if (code == "normal") {
    return std::string(weighed.light_judged ? "Light and development were" : "Development was") +
           " right: " + contrast_text(weighed, aim) + ".";
  }
  if (code == "under-exposed" || code == "over-exposed") {
    return "Light was " + light_text(weighed) + "." + other_time(weighed, aim);
  }
  return std::string("Development was ") + (code == "under-developed" ? "short" : "long") + ": " +
         contrast_text(weighed, aim) + "." + other_light(weighed, population);
}

const char* in_words(const std::string& code) {
  if (code == "normal") {
    return "light and development were right";
  }
  if (code == "under-exposed") {
    return "too little light";
  }
  if (code == "over-exposed") {
    return "too much light";
  }
  return code == "under-developed" ? "too little development" : "too much development";
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
  Finding finding{"weak-developer", confidence, "", {}};
  finding.message = confidence >= told
                        ? "The developer was weak or exhausted: even the leader stayed grey."
                        : "The developer may have been weak: the leader is grey.";
  finding.evidence.push_back("Leader: " + fixed_text(signs.leader->density, 2) +
                             " above clear film; " +
                             fixed_text(population.black_leader_density, 2) + " or more is usual.");
  return finding;
}

}  // namespace

std::vector<Finding> exposure_findings(const LightOrTime& light_or_time, const LightSigns& signs,
                                       const Aim& aim, const RollPopulation& population) {
  std::vector<Finding> findings;
  if (!light_or_time.judged) {
    return findings;
  }
  const CauseProbabilities& causes = light_or_time.causes;
  const double weak =
      causes.under_developed * weak_given_short(light_or_time, signs, aim, population);
  const bool weak_said = weak >= least_confidence;
  const auto add = [&](const char* code, double confidence) {
    if (confidence < least_confidence) {
      return;
    }
    Finding finding{code, confidence, "", light_or_time.evidence};
    finding.message = confidence >= told
                          ? verdict(code, light_or_time, aim, population)
                          : "Can't tell for sure: perhaps " + std::string(in_words(code)) + ", " +
                                percent_text(confidence) + ".";
    if (confidence < told && !light_or_time.would_tell_most.empty()) {
      finding.evidence.push_back(light_or_time.would_tell_most);
    }
    findings.push_back(finding);
  };
  add("normal", causes.normal);
  add("under-exposed", causes.under_exposed);
  add("over-exposed", causes.over_exposed);
  add("under-developed", causes.under_developed - (weak_said ? weak : 0.0));
  add("over-developed", causes.over_developed);
  if (weak_said) {
    findings.push_back(weak_developer(weak, signs, population));
  }
  return findings;
}

}  // namespace fogline
