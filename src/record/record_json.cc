#include "record/card_json.h"
#include "record/judgement_json.h"
#include "record/scan_json.h"
#include "record/sensitometry_json.h"
#include "words/curve_words.h"
#include "words/schema_words.h"

#include <fogline/record/record_json.h>
#include <fogline/words/refusal_words.h>

#include <nlohmann/json.hpp>

namespace fogline {
namespace {

constexpr int report_format_version = 1;

/// What a fact holds, by the names of its row.
template <typename Names, typename Value>
Json json_by_name(const Names& names, const std::vector<Value>& values) {
  Json object = Json::object();
  for (std::size_t i = 0; i < values.size(); ++i) {
    object[std::string(names[i])] = values[i];
  }
  return object;
}

Json json_from_unread(const std::vector<UnreadFile>& unread) {
  Json array = Json::array();
  for (const UnreadFile& file : unread) {
    const FactRow<Refusal>& row = fact_row(file.why.kind);
    array.push_back({{"file", file.file},
                     {"message", sentence_of_refusal(file.file, file.why)},
                     {"code", row.code},
                     {"numbers", json_by_name(row.numbers, file.why.numbers)},
                     {"names", json_by_name(row.names, file.why.names)}});
  }
  return array;
}

Json json_from_medians(const Known<RollMedians>& medians) {
  if (!medians) {
    return nullptr;
  }
  Json object{{"frames", medians->frames}};
  put_flat(object, "shadow", medians->shadow);
  put_flat(object, "middle", medians->middle);
  put_flat(object, "highlight", medians->highlight);
  put_flat(object, "range", medians->range);
  put_flat(object, "net_shadow", medians->net_shadow);
  put_flat(object, "net_middle", medians->net_middle);
  put_flat(object, "net_highlight", medians->net_highlight);
  Whys whys;
  note_why(whys, "shadow", medians->shadow);
  note_why(whys, "middle", medians->middle);
  note_why(whys, "highlight", medians->highlight);
  note_why(whys, "range", medians->range);
  note_why(whys, "net_shadow", medians->net_shadow);
  note_why(whys, "net_middle", medians->net_middle);
  note_why(whys, "net_highlight", medians->net_highlight);
  put_reasons(object, whys);
  return object;
}

/// What lies under net densities of the roll: 0 where its densities count from base.
double base_of(const RollMeasurement& roll) {
  for (const ScanMeasurement& scan : roll.scans) {
    if (scan.base_fog && scan.densities_above == DensitiesAbove::light_path) {
      return scan.base_fog->visual.value;
    }
  }
  return 0.0;
}

Json json_from_contrast(const RollMeasurement& roll) {
  const ContrastEstimate& contrast = roll.contrast;
  Json object{{"method", schema_word(contrast.method)},
              {"contrast_index", json_from_quantity(contrast.contrast_index)},
              {"density_range", json_from_quantity(contrast.density_range)}};
  Whys whys;
  note_why(whys, "contrast_index", contrast.contrast_index);
  note_why(whys, "density_range", contrast.density_range);
  if (roll.sensitometry) {
    put_sensitometry(object, *roll.sensitometry, base_of(roll), whys);
  }
  // A target's own words: "No characteristic curve: ...".
  put_reasons(object, whys, {{"contrast_index", contrast_index_reason(roll)}});
  return object;
}

}  // namespace

std::string json_from_record(const RollRecord& record) {
  const RollMeasurement& measurement = record.measurement;
  Json object{{"format", "fogline report"},
              {"version", report_format_version},
              {"tool_version", record.tool_version},
              {"roll", record.card ? json_from_card(*record.card) : Json(nullptr)}};
  object["scans"] = Json::array();
  for (const ScanMeasurement& scan : measurement.scans) {
    object["scans"].push_back(json_from_scan(scan));
  }
  object["unread"] = json_from_unread(measurement.unread);
  object["roll_medians"] = json_from_medians(measurement.medians);
  if (!measurement.target_cautions.empty()) {
    object["target_cautions"] = json_from_cautions(measurement.target_cautions);
  }
  object["contrast"] = json_from_contrast(measurement);
  if (record.judgement.curve) {
    object["contrast"]["use"] = json_from_curve_judgement(*record.judgement.curve);
  }
  object["findings"] = json_from_findings(record.judgement.findings);
  object["aim"] = json_from_aim(record.judgement.aim);
  object["light_or_time"] = json_from_light_or_time(record.judgement.light_or_time);
  object["advice"] = record.judgement.advice
                         ? json_from_advice(*record.judgement.advice, record.judgement.aim)
                         : Json(nullptr);
  std::map<std::string, std::string> reasons;
  if (!record.card) {
    reasons["roll"] = "No roll card was given.";
  }
  if (!record.judgement.advice) {
    reasons["advice"] = "No scan could be read, so nothing can be advised.";
  }
  Whys whys;
  note_why(whys, "roll_medians", measurement.medians);
  put_reasons(object, whys, reasons);
  constexpr int indent = 2;
  return object.dump(indent, ' ', false, Json::error_handler_t::replace) + "\n";
}

}  // namespace fogline
