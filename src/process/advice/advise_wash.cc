#include "process/advice/advise_baths.h"

#include <numeric>

namespace fogline {
namespace {

int inversions_in_all(const std::vector<int>& fills) {
  return std::accumulate(fills.begin(), fills.end(), 0);
}

void advise_running(const WashCard& wash, const BathPriors& priors, BathAdvice& advice) {
  advice.change = change_to(wash.time_s, priors.wash_running_s, 2.0 * priors.wash_running_s);
  advice.time_s = advice.change == BathChange::keep ? *wash.time_s : priors.wash_running_s;
  advice.reasons.push_back(fact_of(BathReason::running_water, {priors.wash_running_s}));
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
  advice.reasons.push_back(fact_of(BathReason::wash_fills, {priors.wash_rest_s}));
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
      advice.reasons.push_back(fact_of(BathReason::hardened_film));
    }
  } else {
    advise_fills(wash, dye, priors, advice);
  }
  if (dye) {
    advice.reasons.push_back(fact_of(BathReason::fill_for_dye));
  }
  advice.reasons.push_back(fact_of(BathReason::unseen_by_scan));
  return advice;
}

}  // namespace fogline
