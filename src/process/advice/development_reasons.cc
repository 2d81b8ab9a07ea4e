#include "process/advice/development_reasons.h"

#include "process/advice/development_guards.h"

#include <algorithm>
#include <cmath>

namespace fogline {
namespace {

/// A change beyond these is far from what the one roll tried.
constexpr double least_tried_share = 0.65;
constexpr double greatest_tried_share = 1.35;
/// Chance from which on it is told that no time may do.
constexpr double told_out_of_reach = 0.2;
/// Cooling during development from which on it is told: baths should hold within 2 degrees (common
/// practice, no source).
constexpr double told_cooling_c = 2.0;

using Reason = DevelopmentReason;
using Reasons = std::vector<Fact<Reason>>;

Fact<Reason> seen(const TimeReasons& reasons) {
  const Quantity& found = *reasons.ground.light_or_time.contrast_index;
  const double low = found.lower95.value_or(found.value - found.u95);
  const double high = found.upper95.value_or(found.value + found.u95);
  return fact_of(Reason::contrast_seen,
                 {found.value, std::max(0.0, low), high, reasons.ground.aim.contrast_index});
}

/// Of a verdict that leaves the time alone.
Fact<Reason> kept(const TimeReasons& reasons) {
  switch (reasons.verdict) {
    case TimeVerdict::within_tolerance:
      return fact_of(Reason::within_tolerance, {reasons.ground.aim.tolerance});
    case TimeVerdict::light_first:
      return fact_of(Reason::light_first);
    case TimeVerdict::too_little_known:
    case TimeVerdict::change:
      break;
  }
  return fact_of(Reason::too_little_known);
}

Reason landing(const TimeReasons& reasons, const DevelopmentAdvice& advice) {
  if (advice.time_s) {
    return reasons.moved ? Reason::time_lands_at : Reason::time_lands;
  }
  if (reasons.time_share > 1.0) {
    return reasons.moved ? Reason::more_time_lands_at : Reason::more_time_lands;
  }
  return reasons.moved ? Reason::less_time_lands_at : Reason::less_time_lands;
}

Fact<Reason> chances(const TimeReasons& reasons, const DevelopmentAdvice& advice) {
  const Aim& aim = reasons.ground.aim;
  const auto chance = [&](double share) {
    return reasons.belief.chance_within(aim.contrast_index, aim.tolerance, share);
  };
  const double amount = advice.time_s.value_or(std::abs(reasons.time_share - 1.0));
  const Reason kind = landing(reasons, advice);
  if (reasons.moved) {
    return fact_of(kind,
                   {amount, *advice.temperature_c, aim.tolerance, chance(reasons.time_share)});
  }
  return fact_of(kind, {amount, aim.tolerance, chance(reasons.time_share), chance(1.0)});
}

Fact<Reason> doubt(const DevelopmentAdvice& advice) {
  return advice.time_u95_s ? fact_of(Reason::time_doubt, {*advice.time_u95_s})
                           : fact_of(Reason::time_doubt_untold);
}

Fact<Reason> growth(const RollCard* card) {
  return fact_of(card == nullptr || !card->film_type ? Reason::usual_growth_type_untold
                                                     : Reason::usual_growth);
}

void add_missing(const DevelopmentCard& card, Reasons& all) {
  if (!card.time_s) {
    all.push_back(fact_of(Reason::time_untold));
  } else if (!card.temperature_c) {
    all.push_back(fact_of(Reason::temperature_untold));
  }
}

void add_warmth(const TimeReasons& reasons, const DevelopmentCard& card, Reasons& all) {
  if (!card.temperature_c) {
    return;
  }
  const double was_c = *card.temperature_c;
  if (was_c > warmest_advised_c) {
    all.push_back(fact_of(Reason::too_warm, {was_c, warmest_usual_c}));
  } else if (reasons.moved) {
    all.push_back(fact_of(Reason::short_when_warm, {was_c, standard_c}));
  } else if (was_c > warmest_usual_c || was_c < coolest_usual_c) {
    all.push_back(fact_of(Reason::unusual_temperature, {was_c}));
  }
}

void add_cooling(const DevelopmentCard& card, Reasons& all) {
  if (!card.temperature_c || !card.end_temperature_c) {
    return;
  }
  const double drift_c = std::abs(*card.end_temperature_c - *card.temperature_c);
  if (drift_c >= told_cooling_c) {
    all.push_back(fact_of(Reason::tank_changed, {drift_c}));
  }
}

/// What to watch where the time changes much.
void add_reach(const TimeReasons& reasons, Reasons& all) {
  if (reasons.verdict != TimeVerdict::change) {
    return;
  }
  const bool tried =
      reasons.time_share >= least_tried_share && reasons.time_share <= greatest_tried_share;
  if (!tried && !reasons.moved) {
    all.push_back(fact_of(Reason::far_from_tried));
  }
  const double chance = reasons.belief.chance_out_of_reach(reasons.ground.aim.contrast_index);
  if (chance >= told_out_of_reach) {
    all.push_back(fact_of(Reason::out_of_reach, {chance}));
  }
}

}  // namespace

std::vector<Fact<DevelopmentReason>> TimeReasons::facts(const DevelopmentAdvice& advice) const {
  const RollCard* card = ground.card;
  const DevelopmentCard development = card != nullptr ? card->development : DevelopmentCard();
  Reasons all{seen(*this)};
  if (verdict != TimeVerdict::change) {
    all.push_back(kept(*this));
  }
  if (verdict == TimeVerdict::change || moved) {
    all.push_back(chances(*this, advice));
    if (development.time_s) {
      all.push_back(doubt(advice));
    }
    all.push_back(growth(card));
  }
  add_missing(development, all);
  add_warmth(*this, development, all);
  add_cooling(development, all);
  if (advice.time_s && *advice.time_s < shortest_even_s) {
    all.push_back(fact_of(Reason::too_short));
  }
  add_reach(*this, all);
  if (card != nullptr && card->tank) {
    all.push_back(fact_of(Reason::shared_tank, {}, {*card->tank}));
  }
  return all;
}

}  // namespace fogline
