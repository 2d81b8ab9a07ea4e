#include "record/judgement_json.h"

#include "record/fact_json.h"
#include "words/advice_words.h"
#include "words/aim_words.h"
#include "words/bath_words.h"
#include "words/cause_words.h"
#include "words/evidence_words.h"
#include "words/rescue_words.h"
#include "words/schema_words.h"
#include "words/unknown_words.h"

#include <algorithm>
#include <cmath>
#include <initializer_list>
#include <map>
#include <string>
#include <utility>

#include <nlohmann/json.hpp>

namespace fogline {
namespace {

Json json_from_optional(const std::optional<double>& number) {
  return number ? json_from_density(*number) : Json(nullptr);
}

/// Why a value is absent, in `words`; empty where it is there.
template <typename T>
std::string reason_of(const Known<T>& value, std::string (*words)(const WhyUnknown&)) {
  return value ? std::string() : words(value.why());
}

// The contract wants sentences in a list here, so a null without any gets one.
Json json_from_reasons(const std::vector<std::string>& reasons, bool any_null) {
  if (reasons.empty() && any_null) {
    return Json::array({unknown_sentence({})});
  }
  return reasons;
}

Json json_from_development(const DevelopmentAdvice& advice, const Aim& aim) {
  Json object{{"time_s", json_from_optional(advice.time_s)}};
  if (advice.time_s) {
    object["time_u95_s"] = json_from_optional(advice.time_u95_s);
  }
  object["temperature_c"] = json_from_optional(advice.temperature_c);
  object["change_percent"] = json_from_optional(advice.change_percent);
  object["predicted_contrast_index"] =
      json_from_quantity(advice.predicted_contrast_index.optional());
  const bool any_null =
      std::any_of(object.begin(), object.end(), [](const Json& field) { return field.is_null(); });
  object["reasons"] = json_from_reasons(development_sentences(advice, aim), any_null);
  object["facts"] = json_from_facts(parts_of(advice.reasons));
  if (!advice.predicted_contrast_index) {
    object["why_unknown"] = json_from_fact(parts_of(advice.predicted_contrast_index.why()));
  }
  if (advice.would_tell_most) {
    object["would_tell_most_code"] = fact_row(*advice.would_tell_most).code;
  }
  return object;
}

Json json_from_exposure(const ExposureAdvice& advice) {
  Json object{{"change_stops", json_from_optional(advice.change_stops.optional())},
              {"exposure_index", json_from_optional(advice.exposure_index)},
              {"reasons", json_from_reasons(exposure_sentences(advice),
                                            !advice.change_stops || !advice.exposure_index)},
              {"facts", json_from_facts(parts_of(advice.reasons))}};
  if (!advice.change_stops) {
    object["why_unknown"] = json_from_fact(parts_of(advice.change_stops.why()));
  }
  return object;
}

Json json_from_bath(const BathAdvice& advice) {
  Json object{{"time_s", json_from_optional(advice.time_s)},
              {"change", schema_word(advice.change)}};
  if (!advice.fills.empty()) {
    object["fills"] = advice.fills;
  }
  object["reasons"] = json_from_reasons(bath_sentences(advice), !advice.time_s);
  object["facts"] = json_from_facts(parts_of(advice.reasons));
  return object;
}

Json json_from_steps(const std::vector<Fact<RescueStep>>& steps) {
  Json array = Json::array();
  for (const Fact<RescueStep>& step : steps) {
    array.push_back(step_sentence(step));
  }
  return array;
}

}  // namespace

Json json_from_findings(const std::vector<Finding>& findings) {
  Json array = Json::array();
  for (const Finding& finding : findings) {
    Json object{{"code", fact_row(finding.cause).code},
                {"confidence", json_from_probability(finding.confidence)},
                {"message", finding_message(finding)},
                {"message_facts", json_from_facts(parts_of(finding.statements))},
                {"evidence", evidence_sentences(finding)},
                {"evidence_facts", json_from_facts(parts_of(finding.evidence))}};
    if (finding.would_tell_most) {
      object["would_tell_most_code"] = fact_row(*finding.would_tell_most).code;
    }
    array.push_back(std::move(object));
  }
  return array;
}

Json json_from_aim(const Aim& aim) {
  Json object{{"contrast_index", json_from_density(aim.contrast_index)},
              {"tolerance", json_from_density(aim.tolerance)},
              {"source", aim_source_words(aim)},
              {"source_code", fact_row(aim.source).code}};
  if (aim.unknown_like) {
    object["unknown_like"] = *aim.unknown_like;
  }
  return object;
}

Json json_from_light_or_time(const LightOrTime& light_or_time) {
  Json object{{"judged", light_or_time.judged()}};
  if (light_or_time.judged()) {
    const CauseProbabilities& causes = *light_or_time.causes;
    object["probabilities"] = {{"normal", json_from_probability(causes.normal)},
                               {"under-exposed", json_from_probability(causes.under_exposed)},
                               {"over-exposed", json_from_probability(causes.over_exposed)},
                               {"under-developed", json_from_probability(causes.under_developed)},
                               {"over-developed", json_from_probability(causes.over_developed)}};
  } else {
    object["probabilities"] = nullptr;
  }
  object["exposure_stops"] = json_from_quantity(light_or_time.exposure_stops.optional());
  object["contrast_index"] = json_from_quantity(light_or_time.contrast_index.optional());
  object["evidence"] = evidence_sentences(light_or_time.evidence);
  object["evidence_facts"] = json_from_facts(parts_of(light_or_time.evidence));
  object["would_tell_most"] = light_or_time.would_tell_most
                                  ? measurement_sentence(*light_or_time.would_tell_most)
                                  : std::string_view();
  if (light_or_time.would_tell_most) {
    object["would_tell_most_code"] = fact_row(*light_or_time.would_tell_most).code;
  }
  put_reasons(object,
              {{"probabilities", reason_of(light_or_time.causes, reason_sentence)},
               {"exposure_stops", reason_of(light_or_time.exposure_stops, light_reason_sentence)},
               {"contrast_index", reason_of(light_or_time.contrast_index, reason_sentence)}});
  return object;
}

Json json_from_curve_judgement(const CurveJudgement& judgement) {
  const auto range = [](const Known<Quantity>& quantity) {
    return quantity ? Json(iso_range(quantity->value)) : Json(nullptr);
  };
  Json object{{"development", schema_word(judgement.development)},
              {"zones", json_from_quantity(judgement.zones.optional())},
              {"diffusion_log_range", json_from_quantity(judgement.diffusion_range.optional())},
              {"diffusion_iso_range", range(judgement.diffusion_range)},
              {"condenser_log_range", json_from_quantity(judgement.condenser_range.optional())},
              {"condenser_iso_range", range(judgement.condenser_range)},
              {"zone_ix_net_density", json_from_quantity(judgement.densest.optional())},
              {"suits_scanning",
               judgement.suits_scanning ? Json(*judgement.suits_scanning) : Json(nullptr)}};
  if (!judgement.zones) {
    object["development"] = nullptr;
  }
  std::map<std::string, std::string> reasons;
  const auto explain = [&](std::initializer_list<const char*> fields, const std::string& why) {
    for (const char* field : fields) {
      if (object[field].is_null()) {
        reasons[field] = why;
      }
    }
  };
  explain({"development", "zones"}, reason_of(judgement.zones, reason_sentence));
  explain(
      {"diffusion_log_range", "diffusion_iso_range", "condenser_log_range", "condenser_iso_range"},
      reason_of(judgement.diffusion_range, reason_sentence));
  explain({"zone_ix_net_density", "suits_scanning"},
          reason_of(judgement.suits_scanning, reason_sentence));
  put_reasons(object, reasons);
  return object;
}

Json json_from_advice(const Advice& advice, const Aim& aim) {
  return {{"development", json_from_development(advice.development, aim)},
          {"exposure", json_from_exposure(advice.exposure)},
          {"stop", json_from_bath(advice.stop)},
          {"fix", json_from_bath(advice.fix)},
          {"wash", json_from_bath(advice.wash)},
          {"this_roll", json_from_steps(advice.this_roll)},
          {"this_roll_facts", json_from_facts(parts_of(advice.this_roll))}};
}

}  // namespace fogline
