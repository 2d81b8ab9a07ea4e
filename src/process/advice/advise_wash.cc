#include "process/advice/advise_baths.h"
#include "process/advice/bath_cautions.h"
#include "process/advice/spoken_numbers.h"

#include <numeric>
#include <string>

namespace fogline {
namespace {

int inversions_in_all(const std::vector<int>& fills) {
  return std::accumulate(fills.begin(), fills.end(), 0);
}

std::string fills_text(const std::vector<int>& fills) {
  std::string text;
  for (std::size_t i = 0; i < fills.size(); ++i) {
    const char* before = i == 0 ? "" : i + 1 == fills.size() ? " and " : ", ";
    text += before + std::to_string(fills[i]);
  }
  return text;
}

void advise_running(const WashCard& wash, const BathPriors& priors, BathAdvice& advice) {
  advice.change = change_to(wash.time_s, priors.wash_running_s, 2.0 * priors.wash_running_s);
  advice.time_s = advice.change == BathChange::keep ? *wash.time_s : priors.wash_running_s;
  advice.reasons.push_back("Running water: about " + clock_text(priors.wash_running_s) +
                           " at 18 to 24 °C, changed all through (common practice, no source).");
}

void advise_fills(const WashCard& wash, bool dye, const BathPriors& priors, BathAdvice& advice) {
  advice.fills = priors.wash_fills;
  if (dye) {
    advice.fills.push_back(priors.wash_extra_fill);
  }
  if (!wash.fills.empty()) {
    const bool enough = wash.fills.size() >= advice.fills.size() &&
                        inversions_in_all(wash.fills) >= inversions_in_all(advice.fills);
    advice.change = enough ? BathChange::keep : BathChange::longer;
    if (enough) {
      advice.fills = wash.fills;
    }
  }
  advice.reasons.push_back(
      "Fills of fresh water with " + fills_text(advice.fills) +
      " inversions; let the last stand for " + clock_text(priors.wash_rest_s) +
      ", since only the way out of the gelatine takes time (common practice, no source; for a "
      "fixer without hardener).");
}

}  // namespace

BathAdvice advise_wash(const RollCard* card, const RollSigns& signs, const BathPriors& priors) {
  BathAdvice advice;
  const WashCard wash = card != nullptr ? card->wash : WashCard();
  const bool hardened = card != nullptr && card->fix.kind == FixKind::hardening;
  const bool dye = signs.dye_left >= likely;
  if (hardened || (wash.fills.empty() && wash.time_s)) {
    advise_running(wash, priors, advice);
    if (hardened) {
      advice.reasons.emplace_back("Hardened gelatine washes slowly, so fills aren't enough.");
    }
  } else {
    advise_fills(wash, dye, priors, advice);
  }
  if (dye) {
    advice.reasons.emplace_back(
        "Dye is left in this roll: one fill more, the water at 20 to 24 °C.");
  }
  advice.reasons.push_back(unseen_by_scan());
  return advice;
}

}  // namespace fogline
