#include "record/judgement_json.h"

#include "words/schema_words.h"

#include <algorithm>
#include <cmath>
#include <initializer_list>
#include <map>
#include <string>

#include <nlohmann/json.hpp>

namespace fogline {
namespace {

Json json_from_optional(const std::optional<double>& number) {
  return number ? json_from_density(*number) : Json(nullptr);
}

// The contract wants sentences in a list here, so a null without any gets one.
Json json_from_reasons(const std::vector<std::string>& reasons, bool any_null) {
  if (reasons.empty() && any_null) {
    return Json::array({"What is known of this roll doesn't tell."});
  }
  return reasons;
}

Json json_from_development(const DevelopmentAdvice& advice) {
  Json object{{"time_s", json_from_optional(advice.time_s)}};
  if (advice.time_s) {
    object["time_u95_s"] = json_from_optional(advice.time_u95_s);
  }
  object["temperature_c"] = json_from_optional(advice.temperature_c);
  object["change_percent"] = json_from_optional(advice.change_percent);
  object["predicted_contrast_index"] = json_from_quantity(advice.predicted_contrast_index);
  const bool any_null =
      std::any_of(object.begin(), object.end(), [](const Json& field) { return field.is_null(); });
  object["reasons"] = json_from_reasons(advice.reasons, any_null);
  return object;
}

Json json_from_exposure(const ExposureAdvice& advice) {
  return {{"change_stops", json_from_optional(advice.change_stops)},
          {"exposure_index", json_from_optional(advice.exposure_index)},
          {"reasons",
           json_from_reasons(advice.reasons, !advice.change_stops || !advice.exposure_index)}};
}

Json json_from_bath(const BathAdvice& advice) {
  Json object{{"time_s", json_from_optional(advice.time_s)},
              {"change", schema_word(advice.change)}};
  if (!advice.fills.empty()) {
    object["fills"] = advice.fills;
  }
  object["reasons"] = json_from_reasons(advice.reasons, !advice.time_s);
  return object;
}

}  // namespace

Json json_from_findings(const std::vector<Finding>& findings) {
  Json array = Json::array();
  for (const Finding& finding : findings) {
    array.push_back({{"code", finding.code},
                     {"confidence", json_from_probability(finding.confidence)},
                     {"message", finding.message},
                     {"evidence", finding.evidence}});
  }
  return array;
}

Json json_from_aim(const Aim& aim) {
  return {{"contrast_index", json_from_density(aim.contrast_index)},
          {"tolerance", json_from_density(aim.tolerance)},
          {"source", aim.source}};
}

Json json_from_light_or_time(const LightOrTime& light_or_time) {
  Json object{{"judged", light_or_time.judged}};
  if (light_or_time.judged) {
    const CauseProbabilities& causes = light_or_time.causes;
    object["probabilities"] = {{"normal", json_from_probability(causes.normal)},
                               {"under-exposed", json_from_probability(causes.under_exposed)},
                               {"over-exposed", json_from_probability(causes.over_exposed)},
                               {"under-developed", json_from_probability(causes.under_developed)},
                               {"over-developed", json_from_probability(causes.over_developed)}};
  } else {
    object["probabilities"] = nullptr;
  }
  object["exposure_stops"] = json_from_quantity(light_or_time.exposure_stops);
  object["contrast_index"] = json_from_quantity(light_or_time.contrast_index);
  object["evidence"] = light_or_time.evidence;
  object["would_tell_most"] = light_or_time.would_tell_most;
  put_reasons(object, std::map<std::string, std::string>{
                          {"probabilities", light_or_time.reason},
                          {"exposure_stops", light_or_time.judged ? light_or_time.exposure_reason
                                                                  : light_or_time.reason},
                          {"contrast_index", light_or_time.reason}});
  return object;
}

Json json_from_curve_judgement(const CurveJudgement& judgement) {
  const auto range = [](const auto& quantity) {
    return quantity ? Json(iso_range(quantity->value)) : Json(nullptr);
  };
  Json object{{"development", schema_word(judgement.development)},
              {"zones", json_from_quantity(judgement.zones)},
              {"diffusion_log_range", json_from_quantity(judgement.diffusion_range)},
              {"diffusion_iso_range", range(judgement.diffusion_range)},
              {"condenser_log_range", json_from_quantity(judgement.condenser_range)},
              {"condenser_iso_range", range(judgement.condenser_range)},
              {"zone_ix_net_density", json_from_quantity(judgement.densest)},
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
  explain({"development", "zones"}, "The curve tells no contrast index.");
  explain(
      {"diffusion_log_range", "diffusion_iso_range", "condenser_log_range", "condenser_iso_range"},
      told_reason(judgement.diffusion_range));
  explain({"zone_ix_net_density", "suits_scanning"}, told_reason(judgement.densest));
  put_reasons(object, reasons);
  return object;
}

Json json_from_advice(const Advice& advice) {
  return {{"development", json_from_development(advice.development)},
          {"exposure", json_from_exposure(advice.exposure)},
          {"stop", json_from_bath(advice.stop)},
          {"fix", json_from_bath(advice.fix)},
          {"wash", json_from_bath(advice.wash)},
          {"this_roll", advice.this_roll}};
}

}  // namespace fogline
