#include "terminal/calibration_text.h"

#include "terminal/text_layout.h"
#include "words/calibration_words.h"
#include "words/caution_words.h"
#include "words/columns.h"

#include <algorithm>
#include <cmath>

namespace fogline {

namespace {

std::string step_line(const std::string& number, const std::string& reference,
                      const std::string& read, const std::string& difference,
                      const std::string& fate) {
  constexpr std::size_t column = 11;
  return padded(number, 6) + padded(reference, column) + padded(read, column) +
         padded(difference, column + 1) + fate;
}

}  // namespace

std::string text_from_calibration(const CalibrationRun& run, const TextOptions& options) {
  const ScannerCalibration& calibration = run.calibration;
  constexpr int least_width = 40;
  TextLayout layout(std::max(options.width, least_width), options.color);
  layout.heading("In one breath");
  layout.paragraph(calibration_verdict(calibration));
  if (!run.cautions.empty()) {
    layout.heading("What stands against it");
    for (const Caution& caution : run.cautions) {
      layout.item(caution.severity == Severity::note ? '-' : '!', caution_sentence(caution));
    }
  }
  layout.heading("Step by step");
  layout.line(step_line("step", "reference", "read", "difference", ""), true);
  for (const CalibrationStep& step : calibration.steps) {
    layout.line(step_line(
        std::to_string(step.number), text_from_number(step.reference_density, 2),
        std::isfinite(step.density) ? text_from_number(step.density, 3) : std::string("–"),
        step_difference(step),
        step.used      ? ""
        : step.outlier ? "left out"
                       : step_fate(step)));
  }
  layout.heading("How it was made");
  for (const std::string& sentence : calibration_method(calibration)) {
    layout.item('-', sentence);
  }
  return layout.text();
}

}  // namespace fogline
