#include "process/advice/development_reasons.h"

#include "process/advice/development_guards.h"
#include "process/advice/spoken_numbers.h"

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
constexpr int index_digits = 2;
constexpr double hundred = 100.0;

std::string seen(const TimeReasons& reasons) {
  const Quantity& found = *reasons.ground.light_or_time.contrast_index;
  const Aim& aim = reasons.ground.aim;
  const double low = found.lower95.value_or(found.value - found.u95);
  const double high = found.upper95.value_or(found.value + found.u95);
  std::string text =
      "This roll's contrast index is about " + fixed_text(found.value, index_digits) +
      " (95 in 100: " + fixed_text(std::max(0.0, low), index_digits) + " to " +
      fixed_text(high, index_digits) + "), the aim " + fixed_text(aim.contrast_index, index_digits);
  return text + (aim.source.empty() ? "." : ", " + aim.source + ".");
}

std::string change_text(const TimeReasons& reasons, const DevelopmentAdvice& advice) {
  if (advice.time_s) {
    return clock_text(*advice.time_s);
  }
  const double percent = std::abs(hundred * (reasons.time_share - 1.0));
  return fixed_text(percent, 0) + " % " + (reasons.time_share > 1.0 ? "more" : "less") + " time";
}

std::string chances(const TimeReasons& reasons, const DevelopmentAdvice& advice) {
  const Aim& aim = reasons.ground.aim;
  const auto chance = [&](double share) {
    return percent_text(reasons.belief.chance_within(aim.contrast_index, aim.tolerance, share));
  };
  std::string text = change_text(reasons, advice);
  if (reasons.moved) {
    text += " at " + fixed_text(*advice.temperature_c, 0) + " °C";
  }
  text += " lands within " + fixed_text(aim.tolerance, index_digits) +
          " of the aim with a chance of " + chance(reasons.time_share);
  return text + (reasons.moved ? "." : "; your old time with " + chance(1.0) + ".");
}

std::string kept(const TimeReasons& reasons) {
  const Aim& aim = reasons.ground.aim;
  if (reasons.verdict == TimeVerdict::within_tolerance) {
    return "It lies within " + fixed_text(aim.tolerance, index_digits) +
           " of the aim, and nothing so near is called wrong: keep your time.";
  }
  std::string text =
      "Too little is known of this roll's contrast: a change of time would do harm nearly as often "
      "as good. Keep your time.";
  const std::string& next = reasons.ground.light_or_time.would_tell_most;
  return next.empty() ? text : text + " " + next;
}

std::string ground_of_time(const RollCard* card) {
  std::string text =
      "How contrast grows with time is taken from what such film usually does (first order, "
      "Sheppard & Mees 1907; ranges are common practice, no source): one roll doesn't tell it.";
  if (card == nullptr || !card->film_type) {
    text += " The film's type would narrow it: write film_type on the roll card.";
  }
  return text;
}

std::string missing_words(const DevelopmentCard& card) {
  if (!card.time_s) {
    return "Your time isn't on a roll card, so only its change can be told: for any time between 5 "
           "and 14 minutes. With time and temperature on a card it is told on the clock.";
  }
  if (!card.temperature_c) {
    return "The temperature isn't on your roll card: this holds at the same temperature as before.";
  }
  return "";
}

std::string doubt(const DevelopmentAdvice& advice) {
  return advice.time_u95_s ? "The right time lies within " + clock_text(*advice.time_u95_s) +
                                 " of it 95 times in 100."
                           : "How far off the right time may lie can't be told: part of what such "
                             "film does reaches the aim at no time.";
}

std::string warmth(const TimeReasons& reasons, const DevelopmentCard& card) {
  if (!card.temperature_c) {
    return "";
  }
  const std::string was = fixed_text(*card.temperature_c, 1) + " °C";
  if (*card.temperature_c > warmest_advised_c) {
    return "Warning: " + was + " is too warm, gelatine softens. Go back to " +
           fixed_text(warmest_usual_c, 0) + " °C, all baths alike.";
  }
  if (reasons.moved) {
    return "At " + was + " the time would get too short to be even, so go back to " +
           fixed_text(standard_c, 0) + " °C, all baths alike.";
  }
  if (*card.temperature_c > warmest_usual_c || *card.temperature_c < coolest_usual_c) {
    return "Warning: " + was + " lies outside 18 to 24 °C, where development is steady and even.";
  }
  return "";
}

std::string cooling(const DevelopmentCard& card) {
  if (!card.temperature_c || !card.end_temperature_c) {
    return "";
  }
  const double drift_c = *card.end_temperature_c - *card.temperature_c;
  return std::abs(drift_c) < told_cooling_c
             ? ""
             : "The tank changed by " + fixed_text(std::abs(drift_c), 1) +
                   " °C while developing; its mean was counted. Stand it in a water bath.";
}

std::string shortness(const DevelopmentAdvice& advice) {
  return advice.time_s && *advice.time_s < shortest_even_s
             ? "Warning: less than 5:00 gets uneven in a hand tank: dilute the developer more "
               "(and start its time anew), or develop cooler, down to 18 °C."
             : "";
}

std::string far(const TimeReasons& reasons) {
  const bool tried =
      reasons.time_share >= least_tried_share && reasons.time_share <= greatest_tried_share;
  return tried || reasons.moved || reasons.verdict != TimeVerdict::change
             ? ""
             : "That is far from the time that was tried, so it is extrapolated: develop a roll "
               "that doesn't matter first.";
}

std::string reach(const TimeReasons& reasons) {
  const double chance = reasons.belief.chance_out_of_reach(reasons.ground.aim.contrast_index);
  return chance < told_out_of_reach || reasons.verdict != TimeVerdict::change
             ? ""
             : "With a chance of " + percent_text(chance) +
                   " no time reaches the aim: then only a stronger developer does.";
}

std::string tank(const RollCard* card) {
  return card == nullptr || !card->tank
             ? ""
             : "Rolls developed together (" + *card->tank +
                   ") share one error: correct for it once, not once for each.";
}

}  // namespace

std::vector<std::string> TimeReasons::sentences(const DevelopmentAdvice& advice) const {
  const RollCard* card = ground.card;
  const DevelopmentCard development = card != nullptr ? card->development : DevelopmentCard();
  std::vector<std::string> all{seen(*this)};
  const auto add = [&](std::string sentence) {
    if (!sentence.empty()) {
      all.push_back(std::move(sentence));
    }
  };
  if (verdict != TimeVerdict::change) {
    add(kept(*this));
  }
  if (verdict == TimeVerdict::change || moved) {
    add(chances(*this, advice));
    if (development.time_s) {
      add(doubt(advice));
    }
    add(ground_of_time(card));
  }
  for (std::string& sentence :
       std::vector{missing_words(development), warmth(*this, development), cooling(development),
                   shortness(advice), far(*this), reach(*this), tank(card)}) {
    add(std::move(sentence));
  }
  return all;
}

}  // namespace fogline
