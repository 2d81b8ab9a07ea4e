#include "words/curve_words.h"

#include "words/caution_words.h"
#include "words/curve_numbers.h"
#include "words/number_text.h"
#include "words/unknown_words.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <map>
#include <optional>
#include <utility>

namespace fogline {

namespace {

std::string with_doubt(const Quantity& quantity) {
  return sentence_from_density(quantity, DensityUnits::density);
}

/// What can't be told and why; the reason may be a clause or a sentence, or untold.
std::string with_reason(std::string untold, const WhyUnknown& why) {
  const std::string reason = reason_sentence(why);
  if (!reason.empty()) {
    untold.append(": ").append(reason);
  }
  return untold.ends_with('.') ? untold : untold + ".";
}

std::string development_words(const CurveJudgement& judgement) {
  switch (judgement.development) {
    case DevelopmentKind::normal:
      return "Development was normal";
    case DevelopmentKind::expanded:
      return "Development was expanded";
    case DevelopmentKind::contracted:
      break;
  }
  return "Development was contracted";
}

std::string contrast_sentence(const JudgedRoll& record) {
  const auto& judgement = *record.judgement.curve;
  const auto& index = record.measurement.sensitometry->readings.contrast_index;
  if (!index) {
    return with_reason("Contrast index can't be read", index.why());
  }
  const std::string beside_aim =
      with_doubt(*index) + ", aimed at " + text_from_number(record.judgement.aim.contrast_index, 2);
  if (!judgement.zones) {
    return "Contrast index " + beside_aim + ".";
  }
  Quantity zones = *judgement.zones;
  const std::string sign = zones.value < 0.0 ? "N−" : "N+";
  zones.value = std::abs(zones.value);
  return development_words(judgement) + ": contrast index " + beside_aim + " (" + sign +
         with_doubt(zones) + " zones).";
}

std::string speed_sentence(const Sensitometry& read) {
  const CurveReading& index = read.placement.exposure_index;
  if (read.iso.number) {
    return "ISO speed " + std::to_string(read.iso.number->arithmetic) + "/" +
           std::to_string(read.iso.number->degrees) + "°, the ISO 6 triangle being met.";
  }
  if (!index) {
    const CurveReading& speed_point = read.readings.speed_point_log_h;
    return speed_point ? with_reason("No exposure index can be told", index.why())
                       : with_reason("The speed point can't be read", speed_point.why());
  }
  const std::optional<double>& set = read.scale.exposure_index;
  const CurveReading& by_meter = read.placement.exposure_index_by_meter;
  return "With Zone I at the speed point the roll supports exposure index " +
         text_from_number(index->value, 0) + " (" +
         text_from_number(index->lower95.value_or(index->value - index->u95), 0) + " to " +
         text_from_number(index->upper95.value_or(index->value + index->u95), 0) + ")" +
         (set ? ", where " + text_from_number(*set, 0) + " was set" : std::string()) +
         (by_meter ? "; by the meter's constant " + text_from_number(by_meter->value, 0)
                   : std::string()) +
         ".";
}

std::string triangle_sentence(const Sensitometry& read) {
  const CurveReading& gain = read.readings.triangle_gain;
  if (!gain) {
    return with_reason("The ISO 6 triangle can't be laid", gain.why());
  }
  const std::string gained =
      "density gains " + with_doubt(*gain) + " over 1.30, where 0.80 ± 0.05 is asked";
  switch (read.iso.triangle) {
    case TriangleState::met:
      return "The contrast condition of ISO 6 is met: " + gained + ".";
    case TriangleState::not_met:
      return "The contrast condition of ISO 6 isn't met: " + gained + "; no speed is an ISO speed.";
    case TriangleState::cant_tell:
      break;
  }
  return "Whether the contrast condition of ISO 6 is met can't be told: " + gained + ".";
}

std::string paper_sentence(const CurveJudgement& judgement) {
  if (!judgement.diffusion_range || !judgement.condenser_range) {
    return with_reason("What paper suits can't be told", judgement.diffusion_range
                                                             ? judgement.condenser_range.why()
                                                             : judgement.diffusion_range.why());
  }
  return "A subject from Zone I to VIII asks for paper of ISO range R " +
         std::to_string(iso_range(judgement.diffusion_range->value)) + " in diffusion light, R " +
         std::to_string(iso_range(judgement.condenser_range->value)) + " in a condenser enlarger.";
}

std::string scanning_sentence(const CurveJudgement& judgement) {
  if (!judgement.suits_scanning || !judgement.densest) {
    return with_reason(
        "How dense Zone IX becomes can't be told",
        judgement.densest ? judgement.suits_scanning.why() : judgement.densest.why());
  }
  return std::string(*judgement.suits_scanning ? "It suits scanning" : "It is dense for scanning") +
         ": Zone IX lies " + with_doubt(*judgement.densest) + " above base plus fog.";
}

}  // namespace

std::string contrast_index_reason(const RollMeasurement& roll) {
  const Known<Quantity>& index = roll.contrast.contrast_index;
  if (!index && !roll.sensitometry && roll.sensitometry.why() == index.why()) {
    return caution_sentence({Severity::caution, fact_of(CautionKind::target_unread), index.why()});
  }
  return told_reason(index);
}

std::vector<std::string> curve_sentences(const JudgedRoll& record) {
  std::vector<std::string> sentences;
  for (const Caution& caution : record.measurement.target_cautions) {
    sentences.push_back(caution_sentence(caution));
  }
  if (!record.measurement.sensitometry || !record.judgement.curve) {
    return sentences;
  }
  const Sensitometry& read = *record.measurement.sensitometry;
  sentences.insert(sentences.begin(), contrast_sentence(record));
  sentences.push_back(triangle_sentence(read));
  sentences.push_back(speed_sentence(read));
  sentences.push_back(paper_sentence(*record.judgement.curve));
  sentences.push_back(scanning_sentence(*record.judgement.curve));
  for (const ExposedStep& step : read.curve.steps) {
    if (step.left_out) {
      sentences.push_back("Left out of the curve: " + step.label + ". " +
                          unknown_sentence(*step.left_out));
    }
  }
  return sentences;
}

std::string zone_numeral(int zone) {
  constexpr std::array<const char*, 11> numerals{"0",  "I",   "II",   "III", "IV", "V",
                                                 "VI", "VII", "VIII", "IX",  "X"};
  return numerals.at(static_cast<std::size_t>(zone));
}

std::vector<StepRow> step_rows(const Sensitometry& read) {
  const CharacteristicCurve& curve = read.curve;
  constexpr int decimals = 3;
  std::vector<StepRow> rows;
  for (const ExposedStep& step : curve.steps) {
    const double net = step.density - curve.base_fog;
    rows.push_back({step.label, text_from_number(step.log_h, 2), text_from_number(net, decimals),
                    step.left_out
                        ? "left out"
                        : text_from_number(net - curve.mean.density_at(step.log_h), decimals)});
  }
  return rows;
}

std::string curve_number_text(const CurveReading& reading, int decimals) {
  if (!reading) {
    return "–";
  }
  const Quantity& quantity = *reading;
  if (decimals == 0) {
    return text_from_number(quantity.value, 0) + " ± " + text_from_number(quantity.u95, 0);
  }
  return with_doubt(quantity);
}

std::vector<std::string> missing_numbers(const Sensitometry& read) {
  std::map<std::string, std::string> names_of_reason;
  for (const CurveNumber& number : curve_numbers(read)) {
    if (!*number.reading) {
      std::string& names = names_of_reason[unknown_sentence(number.reading->why())];
      names += names.empty() ? "" : ", ";
      names += number.name;
    }
  }
  std::vector<std::string> sentences;
  for (const auto& [reason, names] : names_of_reason) {
    std::string sentence = "Not told, since ";
    sentence.append(reason).append(": ").append(names).append(".");
    sentences.push_back(std::move(sentence));
  }
  return sentences;
}

std::string curve_method(const Sensitometry& read) {
  const CharacteristicCurve& curve = read.curve;
  constexpr std::array<const char*, shape_families.size()> names{
      "logistic bends", "bends of a normal distribution", "hyperbolic bends",
      "one S of dispersed grains"};
  std::string weights;
  for (const ShapeFamily family : shape_families) {
    const auto i = static_cast<std::size_t>(family);
    weights += weights.empty() ? "" : ", ";
    weights += names[i];
    weights += " ";
    weights += text_from_number(100.0 * curve.family_probability[i], 0);
    weights += " %";
  }
  return "The curve is toe, straight line and shoulder or one S, warped by a small smooth "
         "function; four families of shapes are weighed by how probable they make the exposures (" +
         weights + "). The exposures lie within " + text_from_number(curve.residual_rms, 3) +
         " of it (root mean square).";
}

}  // namespace fogline
