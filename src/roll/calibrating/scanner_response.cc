#include "roll/calibrating/scanner_response.h"

#include "numerics/robust.h"

#include <algorithm>
#include <cstdio>
#include <memory>
#include <optional>
#include <string>
#include <vector>

namespace fogline {

namespace {

/// A calibration that tells less than this is worth a word: highlights of good negatives lie at it.
constexpr double wanted_limit = 2.0;

std::string list_of(const std::vector<int>& numbers) {
  std::string text;
  for (std::size_t i = 0; i < numbers.size(); ++i) {
    text += (i == 0 ? "" : i + 1 == numbers.size() ? " and " : ", ") + std::to_string(numbers[i]);
  }
  return text;
}

void add_step_cautions(const ScannerCalibration& calibration, std::vector<Caution>& cautions) {
  std::vector<int> outliers;
  std::vector<int> clipped;
  for (const CalibrationStep& step : calibration.steps) {
    if (step.outlier) {
      outliers.push_back(step.number);
    } else if (!step.used && step.reference_density < calibration.shown_from_density) {
      clipped.push_back(step.number);
    }
  }
  if (!outliers.empty()) {
    cautions.push_back({"steps-left-out", Severity::caution,
                        "Left out as not fitting the others: step " + list_of(outliers) +
                            ". Look for dirt or scratches there, or a slip in the reference."});
  }
  if (!clipped.empty()) {
    cautions.push_back({"steps-clipped", Severity::caution,
                        "At the top code, so not used: step " + list_of(clipped) +
                            ". Scan again with less exposure to use them."});
  }
}

/// How dense the file's own tone curve reads the steps, as a part of the reference: the median of
/// steps dense enough to tell. Nothing where fewer than three are.
std::optional<double> read_part(const ScannerCalibration& calibration) {
  constexpr double dense_enough = 0.4;
  constexpr std::size_t enough = 3;
  std::vector<double> parts;
  for (const CalibrationStep& step : calibration.steps) {
    if (step.used && step.uncalibrated_density && step.reference_density > dense_enough) {
      parts.push_back(*step.uncalibrated_density / step.reference_density);
    }
  }
  return parts.size() < enough ? std::nullopt : std::optional(median(parts));
}

void add_reference_caution(const ScannerCalibration& calibration, std::vector<Caution>& cautions) {
  constexpr double least_part = 0.65;
  constexpr double greatest_part = 1.6;
  const std::optional<double> part = read_part(calibration);
  if (part && (*part < least_part || *part > greatest_part)) {
    char text[16];
    std::snprintf(text, sizeof text, "%.1f", *part);
    cautions.push_back({"reference-doubtful", Severity::caution,
                        std::string("By the file's own tone curve the steps read ") + text +
                            " times as dense as the reference says: either that curve is far off, "
                            "or the reference is another wedge's. Check that it is this one's."});
  }
}

}  // namespace

Transfer scanner_transfer(const ScannerCalibration& calibration) {
  Transfer transfer;
  transfer.kind = TransferKind::scanner;
  transfer.source = TransferSource::scanner_file;
  transfer.scanner = std::make_shared<const CodeCurves>(calibration.curves);
  return transfer;
}

void add_settings(ScannerCalibration& calibration, const ScanInfo& info, ScannerDevice device) {
  calibration.bits = info.bits;
  calibration.channels = info.channels;
  calibration.device = info.camera ? ScannerDevice::camera : device;
  calibration.source_files.push_back(info.file);
}

std::vector<Caution> cautions_of(const ScannerCalibration& calibration) {
  std::vector<Caution> cautions;
  add_step_cautions(calibration, cautions);
  if (calibration.of_silver()) {
    add_reference_caution(calibration, cautions);
  }
  if (calibration.of_silver() && !calibration.bare_code) {
    cautions.push_back({"bare-light-unknown", Severity::caution,
                        "No bare light below the top code lies beside the wedge, so the response "
                        "above the lightest step is a guess; scan again with some in sight."});
  }
  if (calibration.of_silver() && !calibration.stray.measured) {
    cautions.push_back({"stray-light-untold", Severity::note,
                        "Nothing opaque is in sight, so stray light is told by the dense steps "
                        "alone; a strip of black card beside the wedge would tell it better."});
  }
  if (calibration.method == CalibrationMethod::nominal_wedge) {
    cautions.push_back({"nominal-wedge", Severity::caution,
                        "The wedge's densities are as designed, nobody measured them: every "
                        "density carries 3 % for that (standard uncertainty)."});
  }
  if (calibration.of_silver() && calibration.device == ScannerDevice::unknown) {
    cautions.push_back(
        {"device-untold", Severity::note,
         "Flatbeds, film scanners and cameras read silver differently dense; "
         "fogline calibrate --device says which this is, and densities are surer then."});
  }
  if (calibration.shape_only) {
    cautions.push_back(
        {"shape-only", Severity::caution,
         "The density of one layer isn't known, so only the response's shape is: any "
         "power of light would fit as well. Ranges compare, densities don't."});
  }
  if (calibration.of_silver() && calibration.density_limit < wanted_limit) {
    cautions.push_back({"limit-low", Severity::caution,
                        "Densities above the limit can't be told within 0.1. More exposure, 16 "
                        "bits, or a mask round the film against stray light would raise it."});
  }
  if (calibration.bits <= 8) {
    cautions.push_back({"eight-bits", Severity::caution,
                        "Eight bits a channel: dense film falls between two codes. Scan wedge and "
                        "film with 16 bits."});
  }
  return cautions;
}

}  // namespace fogline
