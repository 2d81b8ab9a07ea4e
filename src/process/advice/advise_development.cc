#include "process/advice/advise_development.h"

#include "process/advice/development_guards.h"
#include "process/advice/development_reasons.h"
#include "process/advice/roll_signs.h"
#include "process/advice/time_choice.h"
#include "process/belief/development_belief.h"
#include "process/belief/development_kinetics.h"
#include "process/own_process_film.h"

#include <algorithm>
#include <cmath>

namespace fogline {
namespace {

constexpr double seconds_a_minute = 60.0;

/// A change must help in at least three of five cases to be worth the unrest (common practice, no
/// source).
constexpr double least_chance_of_help = 0.6;
/// And it must land within the tolerance so much more often than the old time: the largest that
/// costs at most one point of those who land there (advice_bench).
constexpr double least_gain = 0.10;

FilmKinetics kinetics_of(const RollCard* card, const DevelopmentPriors& priors) {
  if (card == nullptr || !card->film_type) {
    return priors.unknown;
  }
  return *card->film_type == FilmType::tabular ? priors.tabular : priors.cubic;
}

/// Why no time can be advised; nothing where one can.
std::optional<WhyUnknown> why_no_time(const AdviceGround& ground, const RollSigns& signs) {
  if (const std::optional<Unknown> own = why_own_process(ground.roll, ground.card)) {
    return fact_of(*own);
  }
  if (signs.not_developed >= likely) {
    return fact_of(Unknown::film_not_developed);
  }
  if (signs.weak_developer >= likely) {
    return fact_of(Unknown::developer_weak);
  }
  const Known<Quantity>& contrast_index = ground.light_or_time.contrast_index;
  if (ground.light_or_time.judged() && contrast_index) {
    return std::nullopt;
  }
  return contrast_index.why() == WhyUnknown{} ? fact_of(Unknown::contrast_untold)
                                              : contrast_index.why();
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

/// What is chosen for the next roll.
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
  const auto lands = [&](double share) {
    return choice.belief.chance_within(aim, ground.aim.tolerance, share);
  };
  if (choice.share == 1.0 || lands(choice.share) - lands(1.0) < least_gain ||
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

double sureness_of_time(const AdviceGround& ground) {
  const Known<Quantity>& contrast_index = ground.light_or_time.contrast_index;
  if (!contrast_index) {
    return 0.0;
  }
  const double off = std::abs(contrast_index->value - ground.aim.contrast_index);
  return std::max(0.0, off - ground.aim.tolerance) / std::max(1e-6, contrast_index->u95);
}

DevelopmentAdvice advise_development(const AdviceGround& ground, bool light_first) {
  DevelopmentAdvice advice;
  if (const auto why = why_no_time(ground, read_roll_signs(ground.roll, ground.findings))) {
    advice.predicted_contrast_index = *why;
    return advice;
  }
  DevelopedRoll roll = roll_of(ground);
  const DevelopmentCard card =
      ground.card != nullptr ? ground.card->development : DevelopmentCard();
  Choice choice = choose(roll, ground);
  TimeReasons reasons{ground, choice.belief};
  reasons.verdict = judge_change(choice, ground);
  if (light_first && reasons.verdict == TimeVerdict::change) {
    reasons.verdict = TimeVerdict::light_first;
  }
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
  advice.reasons = reasons.facts(advice);
  if (reasons.verdict == TimeVerdict::too_little_known ||
      reasons.verdict == TimeVerdict::light_first) {
    advice.would_tell_most = ground.light_or_time.would_tell_most;
  }
  return advice;
}

}  // namespace fogline
