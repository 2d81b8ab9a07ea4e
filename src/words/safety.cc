#include "words/safety.h"

#include <algorithm>

// What home workers are told by public health and waste offices: a state fact sheet for home
// photographers (eyes, skin, children, sewage), and 40 CFR 261.24 for the silver limit.

namespace fogline {

namespace {

/// A bath of film that goes through its own process is left to that process's maker.
bool is_advised(const BathAdvice& bath) {
  return std::any_of(bath.reasons.begin(), bath.reasons.end(), [](const Fact<BathReason>& reason) {
    return reason.kind != BathReason::own_process;
  });
}

}  // namespace

std::vector<std::string_view> safety_sentences() {
  return {
      "Developer, stop and fixer: wear gloves, guard the eyes, let fresh air in, and keep children "
      "and food away.",
      "What has held a bath never goes back to food: keep measures and bottles apart, labelled and "
      "closed.",
      "Never add acid to fixer or warm it: it gives off sulfur dioxide. Some people react to "
      "sulfites.",
      "Used fixer carries silver and doesn't belong in the drain: give it to a licensed "
      "collection. "
      "(In the United States waste above 5 mg/L of silver counts as hazardous, 40 CFR 261.24; "
      "other places have their own rules.)",
      "The maker's safety sheet and the rules of the place come before anything said here.",
  };
}

bool names_a_bath(const std::optional<Advice>& advice) {
  if (!advice) {
    return false;
  }
  return is_advised(advice->stop) || is_advised(advice->fix) || is_advised(advice->wash) ||
         std::any_of(advice->this_roll.begin(), advice->this_roll.end(),
                     [](const Fact<RescueStep>& step) { return bath_of(step.kind).has_value(); });
}

std::string_view safety_line() {
  return "Gloves, guarded eyes, fresh air; the maker's sheet first.";
}

}  // namespace fogline
