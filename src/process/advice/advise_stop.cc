#include "process/advice/advise_baths.h"

#include <algorithm>
#include <string>

namespace fogline {
namespace {

bool is_water(const StopCard& stop) {
  return stop.kind && stop.kind->find("water") != std::string::npos;
}

}  // namespace

BathChange change_to(std::optional<double> time_s, double least_s, double most_s) {
  if (!time_s) {
    return BathChange::unknown;
  }
  if (*time_s < least_s) {
    return BathChange::longer;
  }
  return *time_s > most_s ? BathChange::shorter : BathChange::keep;
}

BathAdvice advise_stop(const RollCard* card, const RollSigns& signs, const BathPriors& priors) {
  BathAdvice advice;
  const StopCard stop = card != nullptr ? card->stop : StopCard();
  const bool tabular = card != nullptr && card->film_type == FilmType::tabular;
  const bool dye = signs.dye_left >= likely;
  // Where colour couldn't be told, more time is the safe side: it harms nothing.
  const bool longest = tabular && (dye || !signs.tint_seen_clean);
  const double least_s = longest ? priors.stop_longest_s : priors.stop_s;
  advice.change = change_to(stop.time_s, least_s, priors.stop_longest_s);
  advice.time_s =
      advice.change == BathChange::keep ? *stop.time_s : std::min(least_s, priors.stop_longest_s);
  advice.reasons.push_back(
      longest ? fact_of(BathReason::stop_longest, {priors.stop_longest_s})
              : fact_of(BathReason::stop_enough, {priors.stop_s, priors.stop_longest_s}));
  advice.reasons.push_back(fact_of(is_water(stop) ? BathReason::stop_water : BathReason::stop_gas));
  return advice;
}

}  // namespace fogline
