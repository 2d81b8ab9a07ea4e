#include "record/older_reports.h"

#include "record/fact_fields.h"
#include "words/evidence_words.h"

#include <fogline/base/caution.h>
#include <fogline/base/quantity.h>

#include <numeric>
#include <string>
#include <vector>

#include <nlohmann/json.hpp>

// Revision 1 held sentences where revision 2 holds facts, no table of the curve but rows drawn
// from it, and doubts as 95 % half widths only. It is lifted field by field below, as JSON, so that
// the tables know one form alone. Anything of an unexpected type is left to the reader to refuse.

namespace fogline {

namespace {

using Json = nlohmann::ordered_json;

constexpr int first_with_facts = 2;

Json told(const Json& sentence) {
  return {{"code", told_code}, {"told", sentence}};
}

// A caution's published code stands for several kinds where they differ only in their advice: the
// first of them is taken, since the sentence is known.
Json caution_fact(const Json& caution) {
  const std::string code = caution["code"].is_string() ? caution["code"].get<std::string>() : "";
  for (const FactRow<CautionKind>& row : fact_rows<CautionKind>()) {
    if (caution_code(row.kind) == code) {
      return {{"code", row.code}, {"told", caution["message"]}};
    }
  }
  return {{"code", told_code}, {"names", {{"code", code}}}, {"told", caution["message"]}};
}

void lift_sentences(Json& object, const char* sentences, const char* facts) {
  const auto found = object.find(sentences);
  if (found == object.end() || !found->is_array() || object.contains(facts)) {
    return;
  }
  Json lifted = Json::array();
  for (const Json& sentence : *found) {
    lifted.push_back(told(sentence));
  }
  object[facts] = std::move(lifted);
}

void lift_reasons(Json& object) {
  const auto reasons = object.find("reasons");
  if (reasons == object.end() || !reasons->is_object()) {
    return;
  }
  Json why = Json::object();
  for (const auto& [field, sentence] : reasons->items()) {
    why[field] = told(sentence);
  }
  object["why"] = std::move(why);
}

// What would tell most stood there as its sentence alone.
void lift_measurement(Json& object) {
  const auto sentence = object.find("would_tell_most");
  if (sentence == object.end() || !sentence->is_string()) {
    return;
  }
  for (const FactRow<FurtherMeasurement>& row : fact_rows<FurtherMeasurement>()) {
    if (measurement_sentence(row.kind) == sentence->get<std::string>()) {
      object["would_tell_most_code"] = row.code;
    }
  }
}

void lift_message(Json& object) {
  const auto message = object.find("message");
  if (message == object.end()) {
    return;
  }
  if (object.contains("severity") && object.contains("code")) {
    object["fact"] = caution_fact(object);
  } else if (object.contains("confidence")) {
    object["message_facts"] = Json::array({told(*message)});
  } else {
    object["fact"] = told(*message);
  }
}

/// Every report that doesn't say how far light may stray was judged with this, stops.
constexpr double first_latitude_stops = 0.667;

void lift_latitude(Json& object) {
  if (object.contains("probabilities") && object.contains("exposure_stops")) {
    object["latitude_stops"] = first_latitude_stops;
  }
}

void lift_budget_line(Json& object) {
  if (object.contains("source") && object.contains("common") && object.contains("u95") &&
      object["u95"].is_number()) {
    object["standard_density"] = object["u95"].get<double>() / coverage_factor_95;
  }
}

/// Rows went a stop beyond the exposures, so that these begin half a row's distance short of a stop
/// after the first one, give or take as much.
constexpr double rows_beyond_log_h = 0.3;

double number(const Json& object, const char* field) {
  return object.is_object() && object.contains(field) && object[field].is_number()
             ? object[field].get<double>()
             : 0.0;
}

// The family of which the steps make most.
Json likeliest_family(const Json& families) {
  Json likeliest = nullptr;
  double greatest = -1.0;
  for (const auto& [family, probability] : families.items()) {
    if (probability.is_number() && probability.get<double>() > greatest) {
      greatest = probability.get<double>();
      likeliest = family;
    }
  }
  return likeliest;
}

void lift_base_fog(const Json& contrast, const Json& row, Json& curve) {
  const auto base_fog = contrast.find("base_fog_by_curve");
  if (base_fog != contrast.end()) {
    const double base = number(row, "density") - number(row, "net_density");
    curve["base_fog"] = number(*base_fog, "value") - base;
    curve["base_fog_doubt"] = number(*base_fog, "u95") / coverage_factor_95;
  }
}

// The rows lie at even distances, and the table has a place between every two of them.
void lift_curve(Json& contrast) {
  const auto rows = contrast.find("curve");
  if (rows == contrast.end() || !rows->is_array() || rows->size() < 2) {
    return;
  }
  std::vector<double> net_density;
  std::vector<double> doubt;
  for (const Json& row : *rows) {
    const double net = number(row, "net_density");
    const double standard = number(row, "u95") / coverage_factor_95;
    if (!net_density.empty()) {
      net_density.push_back(std::midpoint(net_density.back(), net));
      doubt.push_back(std::midpoint(doubt.back(), standard));
    }
    net_density.push_back(net);
    doubt.push_back(standard);
  }
  const double first = number(rows->front(), "log_h");
  const double last = number(rows->back(), "log_h");
  const double step = (last - first) / static_cast<double>(net_density.size() - 1);
  const double end = last - rows_beyond_log_h + step;
  Json curve{{"mean", {{"begin_log_h", first}, {"step_log_h", step}, {"net_density", net_density}}},
             {"doubt", doubt},
             {"family", likeliest_family(contrast.value("families", Json::object()))},
             {"begin_log_h", first + rows_beyond_log_h - step},
             {"end_log_h", end},
             {"sure_end_log_h", end}};
  lift_base_fog(contrast, rows->front(), curve);
  contrast["fitted_curve"] = std::move(curve);
  contrast["contrast_index_by_curve"] = contrast.value("contrast_index", Json());
}

// No deeper than the reader lets a text nest.
// NOLINTNEXTLINE(misc-no-recursion)
void lift(Json& value) {
  if (value.is_object()) {
    lift_reasons(value);
    lift_message(value);
    lift_measurement(value);
    lift_budget_line(value);
    lift_latitude(value);
    lift_sentences(value, "evidence", "evidence_facts");
    lift_sentences(value, "reasons", "facts");
    lift_sentences(value, "this_roll", "this_roll_facts");
  }
  if (value.is_structured()) {
    for (Json& inner : value) {
      lift(inner);
    }
  }
}

// A fact finds its sentence as a field of its own, for the reader of a fact that isn't known.
// NOLINTNEXTLINE(misc-no-recursion)
void put_sentences_beside_facts(Json& value) {
  if (value.is_object()) {
    const auto message = value.find("message");
    if (message != value.end() && value.contains("fact") && value["fact"].is_object()) {
      value["fact"]["sentence"] = *message;
    }
    const auto reasons = value.find("reasons");
    if (reasons != value.end() && reasons->is_object() && value.contains("why")) {
      for (const auto& [field, fact] : value["why"].items()) {
        if (fact.is_object() && reasons->contains(field)) {
          fact["sentence"] = (*reasons)[field];
        }
      }
    }
  }
  if (value.is_structured()) {
    for (Json& inner : value) {
      put_sentences_beside_facts(inner);
    }
  }
}

}  // namespace

void bring_up_to_date(Json& report, int revision) {
  if (revision < first_with_facts) {
    lift(report);
    if (report.contains("contrast") && report["contrast"].is_object()) {
      lift_curve(report["contrast"]);
    }
  }
  put_sentences_beside_facts(report);
}

}  // namespace fogline
