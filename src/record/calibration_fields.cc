#include "record/channel_fields.h"
#include "record/measurement_tables.h"

namespace fogline {

using enum Presence;
using enum NumberRange;

namespace {

void walk_code(FieldWalker& walker, StepMeasurement& step, int channels) {
  const bool there = step.role == StepRole::scanner_wedge || step.code != PerChannel<double>{};
  if (!walker.enter("code", left_out, there)) {
    return;
  }
  walker.object([&] {
    if (channels == 1) {
      walk_field(walker, "grey", step.code[0], kept, any);
    } else {
      walk_colours(walker, step.code);
    }
  });
  walker.leave();
}

void walk_step(FieldWalker& walker, StepMeasurement& step, int channels) {
  walker.object([&] {
    walk_field(walker, "number", step.number, required, any);
    walk_field(walker, "role", step.role, kept, any);
    walk_code(walker, step, channels);
    walk_field(walker, "box_px", step.box_px, required, any);
    walk_field(walker, "corners_px", step.corners_px, kept, any);
    walk_field(walker, "reference_density", step.reference_density, null, any);
    walk_field(walker, "log_h", step.log_h, null, any);
    walk_field(walker, "density", step.density, null, any);
    walk_field(walker, "outlier", step.outlier, kept, any);
    walk_repeat(walker, "used", !step.left_out);
    walk_remark(walker, "used", step.left_out);
  });
}

}  // namespace

void walk_steps(FieldWalker& walker, std::vector<StepMeasurement>& steps, int channels) {
  if (!walker.enter("steps", required, true)) {
    return;
  }
  steps.resize(walker.begin_list(steps.size()));
  for (std::size_t i = 0; i < steps.size(); ++i) {
    walker.enter_item(i);
    walk_step(walker, steps[i], channels);
    walker.leave();
  }
  walker.leave();
}

template <>
const Fields<ScanCalibration>& fields_of() {
  static const Fields<ScanCalibration> fields{
      field("method", &ScanCalibration::method, required),
      field("shape_only", &ScanCalibration::shape_only, required),
      field("date", &ScanCalibration::date),
      field("checksum", &ScanCalibration::checksum),
      field("reference", &ScanCalibration::reference, required),
      field("shown_to_density", &ScanCalibration::shown_to_density, null),
      field("own_wedge", &ScanCalibration::own_wedge, required),
      field("same_settings", &ScanCalibration::same_settings, required),
  };
  return fields;
}

template <>
const Fields<BudgetLine>& fields_of() {
  static const Fields<BudgetLine> fields{
      field("source", &BudgetLine::source, required),
      repeat<BudgetLine>("u95",
                         [](const BudgetLine& line) {
                           return std::optional(coverage_factor_95 * line.standard_density);
                         }),
      field("standard_density", &BudgetLine::standard_density, null),
      field("common", &BudgetLine::common, required),
  };
  return fields;
}

template <>
const Fields<DoubtBudget>& fields_of() {
  static const Fields<DoubtBudget> fields{
      field("number", &DoubtBudget::number, required),
      field("density", &DoubtBudget::quantity, null),
      field("lines", &DoubtBudget::lines, required),
  };
  return fields;
}

}  // namespace fogline
