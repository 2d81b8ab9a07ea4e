#include "process/advice/advise_baths.h"

#include <algorithm>
#include <cmath>

namespace fogline {
namespace {

constexpr double setting_step_s = 15.0;
/// Longest time in a plain or hardening fixer that is of use (common practice, no source).
constexpr double fix_plain_longest_s = 1200.0;
/// Below this share of the way to spent, a fixer counts as fresh beyond doubt, and dye left asks
/// for time alone (common practice, no source).
constexpr double fresh_share = 0.5;

/// What the card tells of the fixer, put beside the rules.
struct FixerState {
  std::optional<double> clearing_over_fresh;
  /// Film units per litre taken once the next roll is through, if the bottle holds one litre.
  std::optional<double> units_after_next;
};

FixerState read_state(const FixCard& fix, std::optional<FilmType> type, const BathPriors& priors) {
  FixerState state;
  if (fix.clearing_time_s && fix.fresh_clearing_time_s) {
    state.clearing_over_fresh = *fix.clearing_time_s / *fix.fresh_clearing_time_s;
  }
  if (fix.rolls_before) {
    // The rolls before, this one, and the next.
    state.units_after_next = (*fix.rolls_before + 2) * priors.units_per_roll.of(type);
  }
  return state;
}

/// Whether the card proves the fixer far from spent.
bool surely_fresh(const FixerState& state, const BathPriors& priors) {
  const bool clears =
      state.clearing_over_fresh &&
      *state.clearing_over_fresh - 1.0 < fresh_share * (priors.clearing_when_spent - 1.0);
  const bool few = !state.units_after_next ||
                   *state.units_after_next < fresh_share * priors.film_units_per_litre;
  return clears && few;
}

/// Why to make the fixer up anew; empty where nothing says so.
std::vector<Fact<BathReason>> why_renew(const FixerState& state, const RollSigns& signs,
                                        const BathPriors& priors) {
  std::vector<Fact<BathReason>> why;
  if (state.clearing_over_fresh && *state.clearing_over_fresh >= priors.clearing_when_spent) {
    why.push_back(fact_of(BathReason::clears_slowly,
                          {*state.clearing_over_fresh, priors.clearing_when_spent}));
  }
  if (state.units_after_next && *state.units_after_next > priors.film_units_per_litre) {
    why.push_back(fact_of(
        BathReason::takes_too_much_silver,
        {*state.units_after_next, priors.film_units_per_litre, priors.units_per_roll.tabular}));
  }
  if (signs.fixer_haze >= likely) {
    why.push_back(fact_of(BathReason::looks_milky));
  } else if (signs.dye_left >= likely && !surely_fresh(state, priors)) {
    why.push_back(fact_of(BathReason::dye_left));
  }
  return why;
}

/// Least time, and what it rests on.
struct LeastTime {
  std::optional<double> seconds;
  Fact<BathReason> ground;
};

LeastTime by_clearing(double clearing_s, std::optional<FilmType> type, const BathPriors& priors) {
  const double times = priors.fix_over_clearing.of(type);
  const double least_s = setting_step_s * std::ceil(times * clearing_s / setting_step_s);
  return {least_s, fact_of(type == FilmType::cubic ? BathReason::clearing_time_cubic
                                                   : BathReason::clearing_time_tabular,
                           {times, clearing_s})};
}

LeastTime by_kind(const FixCard& fix, std::optional<FilmType> type, const BathPriors& priors) {
  const ByFilmType& rapid_s = priors.fix_rapid_s;
  const ByFilmType& plain_s = priors.fix_plain_s;
  if (!fix.kind) {
    return {std::nullopt, fact_of(BathReason::fixer_kind_untold, {rapid_s.cubic, rapid_s.tabular,
                                                                  plain_s.cubic, plain_s.tabular})};
  }
  if (*fix.kind == FixKind::rapid) {
    return {rapid_s.of(type),
            fact_of(type ? BathReason::rapid_fixer : BathReason::rapid_fixer_type_untold,
                    {rapid_s.cubic, rapid_s.tabular})};
  }
  return {plain_s.of(type),
          fact_of(type ? BathReason::plain_fixer : BathReason::plain_fixer_type_untold,
                  {plain_s.cubic, plain_s.tabular})};
}

LeastTime least_time(const FixCard& fix, std::optional<FilmType> type, bool renewed,
                     const BathPriors& priors) {
  if (renewed && fix.fresh_clearing_time_s) {
    return by_clearing(*fix.fresh_clearing_time_s, type, priors);
  }
  if (!renewed && fix.clearing_time_s) {
    return by_clearing(*fix.clearing_time_s, type, priors);
  }
  return by_kind(fix, type, priors);
}

double most_of_use_s(const FixCard& fix, const BathPriors& priors) {
  return fix.kind == FixKind::plain || fix.kind == FixKind::hardening ? fix_plain_longest_s
                                                                      : priors.fix_rapid_longest_s;
}

void set_time(const LeastTime& least, const FixCard& fix, double most_s, BathAdvice& advice) {
  if (!least.seconds) {
    return;
  }
  const BathChange change = change_to(fix.time_s, std::min(*least.seconds, most_s), most_s);
  advice.time_s = change == BathChange::keep ? *fix.time_s : std::min(*least.seconds, most_s);
  if (advice.change != BathChange::renew) {
    advice.change = change;
  }
}

}  // namespace

BathAdvice advise_fix(const RollCard* card, const RollSigns& signs, const BathPriors& priors) {
  BathAdvice advice;
  const FixCard fix = card != nullptr ? card->fix : FixCard();
  auto type = card != nullptr ? card->film_type : std::nullopt;
  const FixerState state = read_state(fix, type, priors);
  advice.reasons = why_renew(state, signs, priors);
  const double most_s = most_of_use_s(fix, priors);
  if (signs.dye_left >= likely || signs.fixer_haze >= likely) {
    // What this film left asks for the longer rule, whatever its type.
    type = FilmType::tabular;
  }
  LeastTime least = least_time(fix, type, !advice.reasons.empty(), priors);
  if (advice.reasons.empty() && least.seconds && *least.seconds > most_s) {
    advice.reasons.push_back(fact_of(BathReason::fixes_too_long, {*least.seconds}));
    least = least_time(fix, type, true, priors);
  }
  if (!advice.reasons.empty()) {
    advice.change = BathChange::renew;
    advice.reasons.push_back(fact_of(BathReason::make_up_fresh));
  }
  set_time(least, fix, most_s, advice);
  advice.reasons.push_back(least.ground);
  if (!fix.clearing_time_s) {
    advice.reasons.push_back(fact_of(BathReason::measure_clearing));
  }
  advice.reasons.push_back(fact_of(BathReason::unseen_by_scan));
  advice.reasons.push_back(fact_of(BathReason::handle_with_care));
  return advice;
}

}  // namespace fogline
