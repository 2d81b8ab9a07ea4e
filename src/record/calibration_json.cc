#include "record/calibration_json.h"

#include "words/schema_words.h"

#include <fogline/base/quantity.h>

#include <array>

#include <nlohmann/json.hpp>

namespace fogline {

namespace {

Json json_from_code(const PerChannel<double>& code, int channels) {
  if (channels == 1) {
    return {{"grey", json_from_place(code[0])}};
  }
  return {{"red", json_from_place(code[0])},
          {"green", json_from_place(code[1])},
          {"blue", json_from_place(code[2])}};
}

}  // namespace

Json json_from_calibration(const Known<ScanCalibration>& calibration) {
  if (!calibration) {
    return nullptr;
  }
  return {{"method", schema_word(calibration->method)},
          {"shape_only", calibration->shape_only},
          {"date", calibration->date},
          {"checksum", calibration->checksum},
          {"reference", calibration->reference},
          {"shown_to_density", json_from_density(calibration->shown_to_density)},
          {"own_wedge", calibration->own_wedge},
          {"same_settings", calibration->same_settings}};
}

Json json_from_steps(const ScanMeasurement& scan) {
  Json steps = Json::array();
  for (const StepMeasurement& step : scan.steps) {
    Json object{{"number", step.number}, {"role", schema_word(step.role)}};
    Whys whys;
    if (step.role == StepRole::scanner_wedge) {
      object["code"] = json_from_code(step.code, scan.info.channels);
    }
    object["box_px"] = json_from_box(step.box_px);
    object["reference_density"] = json_from_known(step.reference_density);
    object["log_h"] = json_from_known(step.log_h);
    note_why(whys, "reference_density", step.reference_density);
    note_why(whys, "log_h", step.log_h);
    object["density"] = json_from_quantity(step.density);
    object["outlier"] = step.outlier;
    object["used"] = !step.left_out;
    if (step.left_out) {
      whys.emplace("used", *step.left_out);
    }
    put_reasons(object, whys);
    steps.push_back(std::move(object));
  }
  return steps;
}

Json json_from_budgets(const std::vector<DoubtBudget>& budgets) {
  Json array = Json::array();
  for (const DoubtBudget& budget : budgets) {
    Json lines = Json::array();
    for (const BudgetLine& line : budget.lines) {
      lines.push_back({{"source", schema_word(line.source)},
                       {"u95", json_from_density(coverage_factor_95 * line.standard_density)},
                       {"common", line.common}});
    }
    array.push_back({{"number", budget.number},
                     {"density", json_from_quantity(budget.quantity)},
                     {"lines", std::move(lines)}});
  }
  return array;
}

}  // namespace fogline
