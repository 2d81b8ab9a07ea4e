#include "words/judgement_words.h"

#include "words/number_text.h"
#include "words/unknown_words.h"

#include <algorithm>
#include <cmath>

namespace fogline {
namespace {

std::string plain(const Quantity& quantity) {
  return sentence_from_density(quantity, DensityUnits::density);
}

std::string contrast_words(const Judgement& judgement) {
  return "contrast about " + plain(*judgement.light_or_time.contrast_index) + ", aimed at " +
         text_from_number(judgement.aim.contrast_index, 2);
}

/// "half a stop" and so on: the next half stop that holds `stops`.
std::string within_words(double stops) {
  constexpr std::array<std::string_view, 4> words{"half a stop", "one stop", "a stop and a half",
                                                  "two stops"};
  const double halves = std::ceil(stops / 0.5);
  if (halves <= static_cast<double>(words.size())) {
    return std::string(words[static_cast<std::size_t>(std::max(halves, 1.0)) - 1]);
  }
  return text_from_number(0.5 * halves, halves == 2.0 * std::floor(halves / 2.0) ? 0 : 1) +
         " stops";
}

std::string amount_of_light(const Quantity& stops) {
  Quantity amount = stops;
  amount.value = std::abs(stops.value);
  amount.lower95.reset();
  amount.upper95.reset();
  return std::string(stops.value < 0.0 ? "short" : "plentiful") + " by about " + plain(amount) +
         " stops";
}

std::string light_sentence(const Judgement& judgement, bool leads) {
  if (!judgement.light_or_time.exposure_stops) {
    return "Light wasn't judged.";
  }
  const Quantity& stops = *judgement.light_or_time.exposure_stops;
  if (leads) {
    return "Light was " + amount_of_light(stops) + ".";
  }
  if (std::abs(stops.value) <= judgement.light_or_time.latitude_stops) {
    return "Light was right within " + within_words(std::abs(stops.value) + stops.u95) + ".";
  }
  return "Light may have been " + amount_of_light(stops) + ".";
}

std::string development_sentence(const Judgement& judgement, bool leads) {
  const double off = judgement.light_or_time.contrast_index->value - judgement.aim.contrast_index;
  const bool right = std::abs(off) <= judgement.aim.tolerance;
  std::string text = "Development ";
  text += right && !leads ? "was right" : leads ? "was " : "may have been ";
  if (!right || leads) {
    text += off < 0.0 ? "short" : "long";
  }
  return text + ": " + contrast_words(judgement) + ".";
}

bool calls_for_a_change(const Advice& advice) {
  return advice.development.change_percent.value_or(0.0) != 0.0 ||
         advice.exposure.change_stops.value_or(0.0) != 0.0;
}

/// Where the best guess is that all is right and nothing is to be changed, that goes first: a wide
/// doubt is no fault.
std::string best_guess_words(const Judgement& judgement) {
  if (!judgement.advice || calls_for_a_change(*judgement.advice)) {
    return "";
  }
  const Known<Quantity>& told_stops = judgement.light_or_time.exposure_stops;
  const Quantity stops = told_stops.value_or(Quantity{});
  const double off = judgement.light_or_time.contrast_index->value - judgement.aim.contrast_index;
  if (std::abs(off) > judgement.aim.tolerance ||
      std::abs(stops.value) > judgement.light_or_time.latitude_stops) {
    return "";
  }
  return "Nothing stands out: " + contrast_words(judgement) +
         (told_stops ? ", light right within " + within_words(std::abs(stops.value) + stops.u95)
                     : "") +
         ". ";
}

std::string undecided_sentence(const Judgement& judgement) {
  const CauseProbabilities& causes = *judgement.light_or_time.causes;
  auto chances = cause_chances(causes);
  std::sort(chances.begin(), chances.end(), [](const CauseChance& a, const CauseChance& b) {
    return a.probability > b.probability;
  });
  constexpr double weighty = 0.2;
  const bool light = std::max(causes.under_exposed, causes.over_exposed) >= weighty;
  const bool time = std::max(causes.under_developed, causes.over_developed) >= weighty;
  std::string text = best_guess_words(judgement);
  text += !text.empty()   ? "More closely this scan can't tell: "
          : light && time ? "This scan can't tell light from time: "
                          : "This scan doesn't tell for sure: ";
  constexpr std::size_t said = 3;
  constexpr double least_said = 0.1;
  for (std::size_t i = 0; i < said && chances[i].probability >= least_said; ++i) {
    text += i == 0 ? "" : ", ";
    text += chances[i].name;
    text.append(" ").append(chance_text(chances[i].probability));
  }
  return text + ".";
}

std::string told_sentence(const Judgement& judgement) {
  const CauseProbabilities& causes = *judgement.light_or_time.causes;
  if (causes.normal >= told_from && !judgement.light_or_time.exposure_stops) {
    return "Development was right: " + contrast_words(judgement) + ". Light wasn't judged.";
  }
  if (causes.normal >= told_from) {
    const Quantity& stops = *judgement.light_or_time.exposure_stops;
    return "Light and development were right: " + contrast_words(judgement) + ", light within " +
           within_words(std::abs(stops.value) + stops.u95) + ".";
  }
  const bool light_leads = std::max(causes.under_exposed, causes.over_exposed) >= told_from;
  const std::string light = light_sentence(judgement, light_leads);
  const std::string development = development_sentence(judgement, !light_leads);
  return light_leads ? light + " " + development : development + " " + light;
}

std::string not_judged_sentence(const JudgedRoll& record) {
  for (const Finding& finding : record.judgement.findings) {
    if ((finding.cause == Cause::not_exposed || finding.cause == Cause::not_developed) &&
        finding.confidence >= told_from) {
      return finding_message(finding);
    }
  }
  if (record.measurement.scans.empty()) {
    return "No scan could be read.";
  }
  std::string reason = reason_sentence(record.judgement.light_or_time.causes.why());
  if (reason.empty()) {
    return "Light and development can't be told from this scan.";
  }
  if (reason.front() >= 'A' && reason.front() <= 'Z') {
    reason.front() = static_cast<char>(reason.front() - 'A' + 'a');
  }
  return "Light and development can't be told: " + reason;
}

/// A coloured veil that may be the stock's own is no fault yet.
bool may_be_the_films_own(const JudgedRoll& record, Cause cause) {
  return (cause == Cause::dye_left || cause == Cause::stained) &&
         std::all_of(record.measurement.scans.begin(), record.measurement.scans.end(),
                     [](const ScanMeasurement& scan) {
                       return scan.tint.components.empty() || scan.tint.may_be_stock;
                     });
}

}  // namespace

std::string chance_text(double probability) {
  constexpr double nearly_one = 0.995;
  constexpr double nearly_none = 0.005;
  if (probability >= nearly_one) {
    return "over 99 %";
  }
  if (!(probability > nearly_none)) {
    return "under 1 %";
  }
  return text_from_number(100.0 * probability, 0) + " %";
}

std::array<CauseChance, 5> cause_chances(const CauseProbabilities& causes) {
  return {{{"all right", causes.normal},
           {"light short", causes.under_exposed},
           {"light plentiful", causes.over_exposed},
           {"development short", causes.under_developed},
           {"development long", causes.over_developed}}};
}

std::string judgement_sentence(const JudgedRoll& record) {
  const LightOrTime& weighed = record.judgement.light_or_time;
  if (!weighed.judged() || !weighed.contrast_index) {
    return not_judged_sentence(record);
  }
  const auto chances = cause_chances(*weighed.causes);
  const bool told = std::any_of(chances.begin(), chances.end(), [](const CauseChance& chance) {
    return chance.probability >= told_from;
  });
  return told ? told_sentence(record.judgement) : undecided_sentence(record.judgement);
}

std::string also_sentence(const JudgedRoll& record) {
  constexpr std::size_t most_said = 4;
  std::string text;
  std::size_t said = 0;
  for (const Finding& finding : record.judgement.findings) {
    const std::string_view words = cause_words(finding.cause);
    if (words.empty() || finding.confidence < told_from || said == most_said) {
      continue;
    }
    text += said++ == 0 ? "Also seen: " : ", ";
    text += words;
    text.append(" (").append(chance_text(finding.confidence));
    text += may_be_the_films_own(record, finding.cause) ? ", unless the film's base is so tinted)"
                                                        : ")";
  }
  return text.empty() ? text : text + ".";
}

std::vector<const Finding*> findings_at(const JudgedRoll& record, FindingPlace place) {
  std::vector<const Finding*> found;
  for (const Finding& finding : record.judgement.findings) {
    if (place_of(finding.cause) == place) {
      found.push_back(&finding);
    }
  }
  return found;
}

std::vector<std::string> fog_sentences(const JudgedRoll& record) {
  std::vector<std::string> sentences;
  for (const Finding* finding : findings_at(record, FindingPlace::clear_film)) {
    if (finding->cause == Cause::fogged) {
      sentences.push_back(finding_sentence(*finding));
    }
  }
  return sentences;
}

}  // namespace fogline
