#include "process/advice/advise_development.h"

#include "process/advice/development_guards.h"
#include "process/advice/development_reasons.h"
#include "process/advice/roll_signs.h"
#include "process/advice/time_choice.h"
#include "process/belief/development_belief.h"
#include "process/belief/development_kinetics.h"

#include <algorithm>
#include <cmath>
#include <string>
#include <utility>

namespace fogline {
namespace {

constexpr double seconds_a_minute = 60.0;

/// A change must help in at least three of five cases to be worth the unrest (common practice, no
/// source).
constexpr double least_chance_of_help = 0.6;

FilmKinetics kinetics_of(const RollCard* card, const DevelopmentPriors& priors) {
  if (card == nullptr || !card->film_type) {
    return priors.unknown;
  }
  return *card->film_type == FilmType::tabular ? priors.tabular : priors.cubic;
}

/// Why no time can be advised; empty where one can.
std::string why_no_time(const AdviceGround& ground, const RollSigns& signs) {
  if (ground.card != nullptr && ground.card->film_type == FilmType::chromogenic) {
    return "This is chromogenic film: its picture is dye, and no rule known here gives its time. "
           "Keep to the time of its own process.";
  }
  if (signs.not_developed >= likely) {
    return "The film wasn't developed at all, and no time can mend that: find out first whether "
           "the developer was dead or the baths were swapped.";
  }
  if (signs.weak_developer >= likely) {
    return "The developer was weak: make it up fresh and keep your time. What a longer time would "
           "do in a dying developer can't be told.";
  }
  if (!ground.light_or_time.judged || !ground.light_or_time.contrast_index) {
    return ground.light_or_time.reason.empty()
               ? "This roll's contrast couldn't be told, so nothing speaks against your time."
               : ground.light_or_time.reason;
  }
  return "";
}

/// Mean temperature over the development, for the curve: a tank that cools develops at its mean.
std::optional<double> mean_temperature_c(const DevelopmentCard& card) {
  if (!card.temperature_c) {
    return std::nullopt;
  }
  return 0.5 * (*card.temperature_c + card.end_temperature_c.value_or(*card.temperature_c));
}

DevelopedRoll roll_of(const AdviceGround& ground) {
  DevelopedRoll roll;
  roll.contrast_index = *ground.light_or_time.contrast_index;
  roll.aim = ground.aim.contrast_index;
  if (ground.card != nullptr) {
    if (ground.card->development.time_s) {
      roll.time_min = *ground.card->development.time_s / seconds_a_minute;
    }
    roll.temperature_c = mean_temperature_c(ground.card->development);
  }
  return roll;
}

/// What is chosen for the next roll, before it is put into words.
struct Choice {
  double share = 1.0;
  DevelopmentBelief belief;
};

Choice choose(const DevelopedRoll& roll, const AdviceGround& ground) {
  Choice choice;
  const DevelopmentPriors& priors = ground.priors.development;
  choice.belief = believe_development(roll, kinetics_of(ground.card, priors), priors);
  double centre = 1.0;
  if (roll.temperature_c && roll.next_temperature_c) {
    const double usual_q10 = std::sqrt(priors.q10.low * priors.q10.high);
    centre = rate_factor(usual_q10, *roll.next_temperature_c, *roll.temperature_c);
  }
  const auto time_s =
      roll.time_min ? std::optional(*roll.time_min * seconds_a_minute) : std::nullopt;
  choice.share = best_share(choice.belief, ground.aim, settable_shares(time_s, centre));
  return choice;
}

/// Moves the next roll to `temperature_c` (at the start; the tank cools as before).
void move_to(double temperature_c, const DevelopmentCard& card, DevelopedRoll& roll) {
  roll.next_temperature_c = *roll.temperature_c + (temperature_c - *card.temperature_c);
}

/// Whether to leave the time as it was, and why.
TimeVerdict judge_change(const Choice& choice, const AdviceGround& ground) {
  const double aim = ground.aim.contrast_index;
  const double off = std::abs(ground.light_or_time.contrast_index->value - aim);
  if (off <= ground.aim.tolerance) {
    return TimeVerdict::within_tolerance;
  }
  if (choice.share == 1.0 ||
      choice.belief.chance_of_help(aim, choice.share) < least_chance_of_help) {
    return TimeVerdict::too_little_known;
  }
  return TimeVerdict::change;
}

void fill_numbers(const Choice& choice, const DevelopedRoll& roll, const Aim& aim,
                  DevelopmentAdvice& advice) {
  constexpr double hundred = 100.0;
  advice.predicted_contrast_index = choice.belief.contrast_of_next(choice.share);
  if (!roll.next_temperature_c) {
    advice.change_percent = std::round(hundred * (choice.share - 1.0));
  }
  if (!roll.time_min) {
    return;
  }
  const double time_s = *roll.time_min * seconds_a_minute;
  advice.time_s = std::round(choice.share * time_s);
  if (const auto share_u95 = choice.belief.share_u95(aim.contrast_index, choice.share)) {
    advice.time_u95_s = std::round(*share_u95 * time_s);
  }
}

}  // namespace

DevelopmentAdvice advise_development(const AdviceGround& ground) {
  DevelopmentAdvice advice;
  const std::string why_not = why_no_time(ground, read_roll_signs(ground.roll, ground.findings));
  if (!why_not.empty()) {
    advice.reasons.push_back(why_not);
    return advice;
  }
  DevelopedRoll roll = roll_of(ground);
  const DevelopmentCard card =
      ground.card != nullptr ? ground.card->development : DevelopmentCard();
  Choice choice = choose(roll, ground);
  TimeReasons reasons{ground, choice.belief};
  reasons.verdict = judge_change(choice, ground);
  if (reasons.verdict != TimeVerdict::change) {
    choice.share = 1.0;
  }
  advice.temperature_c = card.temperature_c;
  const bool too_short = reasons.verdict == TimeVerdict::change && card.time_s &&
                         choice.share * *card.time_s < shortest_even_s;
  if (card.temperature_c && *card.temperature_c > warmest_advised_c) {
    advice.temperature_c = warmest_usual_c;
  } else if (too_short && card.temperature_c && *card.temperature_c > standard_c) {
    advice.temperature_c = standard_c;
  }
  if (advice.temperature_c != card.temperature_c) {
    move_to(*advice.temperature_c, card, roll);
    choice = choose(roll, ground);
    reasons.moved = true;
  }
  fill_numbers(choice, roll, ground.aim, advice);
  reasons.time_share = choice.share;
  advice.reasons = reasons.sentences(advice);
  return advice;
}

}  // namespace fogline
