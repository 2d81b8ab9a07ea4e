#include "words/advice_words.h"

#include "words/aim_words.h"
#include "words/evidence_words.h"
#include "words/fact_words.h"
#include "words/unknown_words.h"

#include <array>

namespace fogline {

namespace {

constexpr std::array<FactWords<DevelopmentReason>, 25> developments{{
    {DevelopmentReason::contrast_seen,
     "This roll's contrast index is about {contrast_index:2} (95 in 100: {lower95:2} to "
     "{upper95:2}), the aim {aim:2}, "},
    {DevelopmentReason::within_tolerance,
     "It lies within {tolerance:2} of the aim, and nothing so near is called wrong: keep your "
     "time."},
    {DevelopmentReason::too_little_known,
     "Too little is known of this roll's contrast: no other time lands near the aim much more "
     "often "
     "than yours. Keep your time."},
    {DevelopmentReason::light_first,
     "Light and time aren't both sure here, and a roll with both changed would tell neither: "
     "change "
     "the light first and keep your time."},
    {DevelopmentReason::time_lands,
     "{time_s:clock} lands within {tolerance:2} of the aim with a chance of {chance:percent}; your "
     "old time with {old_chance:percent}."},
    {DevelopmentReason::more_time_lands,
     "{change_share:percent} more time lands within {tolerance:2} of the aim with a chance of "
     "{chance:percent}; your old time with {old_chance:percent}."},
    {DevelopmentReason::less_time_lands,
     "{change_share:percent} less time lands within {tolerance:2} of the aim with a chance of "
     "{chance:percent}; your old time with {old_chance:percent}."},
    {DevelopmentReason::time_lands_at,
     "{time_s:clock} at {temperature_c:0} °C lands within {tolerance:2} of the aim with a chance "
     "of {chance:percent}."},
    {DevelopmentReason::more_time_lands_at,
     "{change_share:percent} more time at {temperature_c:0} °C lands within {tolerance:2} of the "
     "aim with a chance of {chance:percent}."},
    {DevelopmentReason::less_time_lands_at,
     "{change_share:percent} less time at {temperature_c:0} °C lands within {tolerance:2} of the "
     "aim with a chance of {chance:percent}."},
    {DevelopmentReason::time_doubt,
     "The right time lies within {time_u95_s:clock} of it 95 times in 100."},
    {DevelopmentReason::time_doubt_untold,
     "How far off the right time may lie can't be told: part of what such film does reaches the "
     "aim at no time."},
    {DevelopmentReason::usual_growth,
     "How contrast grows with time is taken from what such film usually does (first order, "
     "Sheppard & Mees 1907; ranges are common practice, no source): one roll doesn't tell it."},
    {DevelopmentReason::usual_growth_type_untold,
     "How contrast grows with time is taken from what such film usually does (first order, "
     "Sheppard & Mees 1907; ranges are common practice, no source): one roll doesn't tell it. The "
     "film's type would narrow it: write film_type on the roll card."},
    {DevelopmentReason::time_untold,
     "Your time isn't on a roll card, so only its change can be told: for any time between 5 and "
     "14 minutes. With time and temperature on a card it is told on the clock."},
    {DevelopmentReason::temperature_untold,
     "The temperature isn't on your roll card: this holds at the same temperature as before."},
    {DevelopmentReason::too_warm,
     "Warning: {temperature_c:1} °C is too warm, gelatine softens. Go back to {back_to_c:0} °C, "
     "all baths alike."},
    {DevelopmentReason::short_when_warm,
     "At {temperature_c:1} °C the time would get too short to be even, so go back to {back_to_c:0} "
     "°C, all baths alike."},
    {DevelopmentReason::unusual_temperature,
     "Warning: {temperature_c:1} °C lies outside 18 to 24 °C, where development is steady and "
     "even."},
    {DevelopmentReason::tank_changed,
     "The tank changed by {change_c:1} °C while developing; its mean was counted. Stand it in a "
     "water bath."},
    {DevelopmentReason::too_short,
     "Warning: less than 5:00 gets uneven in a hand tank: dilute the developer more (and start its "
     "time anew), or develop cooler, down to 18 °C."},
    {DevelopmentReason::far_from_tried,
     "That is far from the time that was tried, so it is extrapolated: develop a roll that doesn't "
     "matter first."},
    {DevelopmentReason::out_of_reach,
     "With a chance of {chance:percent} no time reaches the aim: then only a stronger developer "
     "does."},
    {DevelopmentReason::shared_tank,
     "Rolls developed together ({tank}) share one error: correct for it once, not once for each."},
    {DevelopmentReason::told, "It was told by another report."},
}};
static_assert(rows_in_order(developments));

constexpr std::array<FactWords<ExposureReason>, 9> exposures{{
    {ExposureReason::got_more_light,
     "This roll got about {stops:1} stops more light than usual (95 in 100: within {stops_u95:1} "
     "stops of it)."},
    {ExposureReason::got_less_light,
     "This roll got about {stops:1} stops less light than usual (95 in 100: within {stops_u95:1} "
     "stops of it)."},
    {ExposureReason::no_error_worth_correcting,
     "That is no error worth correcting on the word of one roll: expose as before."},
    {ExposureReason::time_first,
     "Light and time aren't both sure here, and a roll with both changed would tell neither: "
     "change "
     "the time first and expose as before."},
    {ExposureReason::give_more_light,
     "Give {stops:stops} more light: the part of the error that habit explains and that comes "
     "again, the rest being the chance of one roll's scenes (shares are common practice, no "
     "source)."},
    {ExposureReason::give_less_light,
     "Give {stops:stops} less light: the part of the error that habit explains and that comes "
     "again, the rest being the chance of one roll's scenes (shares are common practice, no "
     "source)."},
    {ExposureReason::gross_error,
     "So large an error points to meter, shutter, aperture or a wrong setting: look there first."},
    {ExposureReason::set_index,
     "Set exposure index {exposure_index:0} instead of {exposure_index_before:0}."},
    {ExposureReason::told, "It was told by another report."},
}};
static_assert(rows_in_order(exposures));

/// Two reasons end with what stands beside them: where the aim comes from, and what would tell
/// more.
std::string development_sentence(const Fact<DevelopmentReason>& reason,
                                 const DevelopmentAdvice& advice, const Aim& aim) {
  std::string sentence = sentence_of<DevelopmentReason>(reason, developments);
  if (!reason.told.empty()) {
    return sentence;
  }
  if (reason.kind == DevelopmentReason::contrast_seen) {
    return sentence + aim_source_words(aim) + ".";
  }
  const bool keeps = reason.kind == DevelopmentReason::too_little_known ||
                     reason.kind == DevelopmentReason::light_first;
  if (keeps && advice.would_tell_most) {
    return sentence.append(" ").append(measurement_sentence(*advice.would_tell_most));
  }
  return sentence;
}

/// A list of the one reason for which nothing is advised.
std::vector<std::string> alone(const std::string& reason) {
  return reason.empty() ? std::vector<std::string>{} : std::vector<std::string>{reason};
}

}  // namespace

std::vector<std::string> development_sentences(const DevelopmentAdvice& advice, const Aim& aim) {
  if (!advice.predicted_contrast_index && advice.reasons.empty()) {
    return alone(reason_sentence(advice.predicted_contrast_index.why()));
  }
  std::vector<std::string> sentences;
  for (const Fact<DevelopmentReason>& reason : advice.reasons) {
    sentences.push_back(development_sentence(reason, advice, aim));
  }
  return sentences;
}

std::vector<std::string> exposure_sentences(const ExposureAdvice& advice) {
  if (!advice.change_stops && advice.reasons.empty()) {
    return alone(light_reason_sentence(advice.change_stops.why()));
  }
  std::vector<std::string> sentences;
  for (const Fact<ExposureReason>& reason : advice.reasons) {
    sentences.push_back(sentence_of<ExposureReason>(reason, exposures));
  }
  return sentences;
}

std::string light_reason_sentence(const WhyUnknown& why) {
  if (!why.told.empty()) {
    return why.told;
  }
  switch (why.kind) {
    case Unknown::no_density_scan:
    case Unknown::no_clear_film:
    case Unknown::no_picture:
    case Unknown::unusual_roll:
    case Unknown::nothing_metered:
    case Unknown::film_not_exposed:
    case Unknown::exposure_untold:
      return reason_sentence(why);
    default:
      break;
  }
  const std::string reason = reason_sentence(why);
  return reason.empty() ? reason : "The speed point can't be read: " + reason + ".";
}

}  // namespace fogline
