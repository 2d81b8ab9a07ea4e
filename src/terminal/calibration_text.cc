#include "terminal/calibration_text.h"

#include "terminal/text_layout.h"
#include "words/calibration_words.h"
#include "words/caution_words.h"
#include "words/report_words.h"
#include "words/table_words.h"

#include <algorithm>
#include <cmath>

namespace fogline {

namespace {

void put_steps(TextLayout& layout, const ScannerCalibration& calibration) {
  const auto& [number, reference, codes, read, difference, fate] = step_table_head;
  std::vector<std::vector<std::string>> rows{
      {std::string(number), std::string(reference), std::string(read), std::string(difference)}};
  for (const CalibrationStep& step : calibration.steps) {
    rows.push_back({std::to_string(step.number), text_from_number(step.reference_density, 2),
                    std::isfinite(step.density) ? text_from_number(step.density, 3) : "–",
                    step_difference(step)});
    if (!step.used) {
      rows.back().push_back(step.outlier ? std::string(left_out_words()) : step_fate(step));
    }
  }
  put_columns(layout, rows);
}

}  // namespace

std::string text_from_calibration(const CalibrationRun& run, const TextOptions& options) {
  const ScannerCalibration& calibration = run.calibration;
  TextLayout layout(std::max(options.width, least_text_width), options.color);
  layout.heading(calibration_titles.verdict);
  layout.paragraph(calibration_verdict(calibration));
  layout.heading(calibration_titles.objections);
  for (const Caution& caution : run.cautions) {
    layout.item_once(caution.severity == Severity::note ? '-' : '!', caution_sentence(caution));
  }
  layout.heading(calibration_titles.steps);
  put_steps(layout, calibration);
  layout.heading(calibration_titles.method);
  for (const std::string& sentence : calibration_method(calibration)) {
    layout.item('-', sentence);
  }
  return layout.text();
}

}  // namespace fogline
