#include "process/advice/advise_baths.h"
#include "process/advice/bath_cautions.h"
#include "process/advice/spoken_numbers.h"

#include <algorithm>
#include <cmath>
#include <string>

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

/// Why to make the fixer up anew, a sentence each; empty where nothing says so.
std::vector<std::string> why_renew(const FixerState& state, const RollSigns& signs,
                                   const BathPriors& priors) {
  std::vector<std::string> why;
  if (state.clearing_over_fresh && *state.clearing_over_fresh >= priors.clearing_when_spent) {
    why.push_back("It clears " + fixed_text(*state.clearing_over_fresh, 1) +
                  " times slower than fresh: spent at " +
                  fixed_text(priors.clearing_when_spent, 0) + " times (NAVEDTRA 14209).");
  }
  if (state.units_after_next && *state.units_after_next > priors.film_units_per_litre) {
    why.push_back(
        "With the next roll it would have taken " + fixed_text(*state.units_after_next, 0) +
        " rolls' worth of silver, more than the " + fixed_text(priors.film_units_per_litre, 0) +
        " that a litre bears (Anchell, The Darkroom Cookbook; one litre is assumed; "
        "tabular-grain film counts " +
        fixed_text(priors.units_per_roll.tabular, 1) + " times, common practice).");
  }
  if (signs.fixer_haze >= likely) {
    why.emplace_back("This roll's clear film looks milky, as film does that isn't fixed out.");
  } else if (signs.dye_left >= likely && !surely_fresh(state, priors)) {
    why.emplace_back(
        "Dye is left in this roll, which also points to short or tired fixing, and no clearing "
        "test on the card says otherwise.");
  }
  return why;
}

/// Least time, and what it rests on.
struct LeastTime {
  std::optional<double> seconds;
  std::string ground;
};

LeastTime by_clearing(double clearing_s, std::optional<FilmType> type, const BathPriors& priors) {
  const double times = priors.fix_over_clearing.of(type);
  const double least_s = setting_step_s * std::ceil(times * clearing_s / setting_step_s);
  std::string text =
      fixed_text(times, 0) + " times the clearing time of " + clock_text(clearing_s) +
      (type == FilmType::cubic ? " (NAVEDTRA 14209)."
                               : " (as for tabular-grain film; common practice, no source).");
  return {least_s, text};
}

LeastTime by_kind(const FixCard& fix, std::optional<FilmType> type, const BathPriors& priors) {
  if (!fix.kind) {
    return {std::nullopt,
            "The kind of fixer isn't on a roll card, so no time can be told: rapid fixer " +
                clock_text(priors.fix_rapid_s.cubic) + " (tabular-grain film " +
                clock_text(priors.fix_rapid_s.tabular) + "), plain thiosulfate " +
                clock_text(priors.fix_plain_s.cubic) + " to " +
                clock_text(priors.fix_plain_s.tabular) + " (common practice, no source)."};
  }
  const ByFilmType& usual = *fix.kind == FixKind::rapid ? priors.fix_rapid_s : priors.fix_plain_s;
  std::string text = *fix.kind == FixKind::rapid ? "Rapid fixer: " : "Plain or hardening fixer: ";
  text += clock_text(usual.cubic) + ", tabular-grain film " + clock_text(usual.tabular) +
          " (common practice, no source).";
  if (!type) {
    text += " The film's type isn't known, so the longer.";
  }
  return {usual.of(type), text};
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
    advice.reasons.push_back("It clears so slowly that " + clock_text(*least.seconds) +
                             " would be needed, and long fixing takes silver off the picture.");
    least = least_time(fix, type, true, priors);
  }
  if (!advice.reasons.empty()) {
    advice.change = BathChange::renew;
    advice.reasons.emplace_back("Make it up fresh rather than stronger.");
  }
  set_time(least, fix, most_s, advice);
  advice.reasons.push_back(least.ground);
  if (!fix.clearing_time_s) {
    advice.reasons.emplace_back(
        "Better than any rule: time how long a piece of the same film takes to clear in this "
        "fixer, fresh and before each session, and write both on the card.");
  }
  advice.reasons.push_back(unseen_by_scan());
  advice.reasons.push_back(bath_caution());
  return advice;
}

}  // namespace fogline
