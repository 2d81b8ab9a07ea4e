#include "roll/calibrating/scanner_response.h"

#include "numerics/robust.h"

#include <algorithm>
#include <memory>
#include <optional>
#include <vector>

namespace fogline {

namespace {

/// A calibration that tells less than this is worth a word: highlights of good negatives lie at it.
constexpr double wanted_limit = 2.0;

void add_step_cautions(const ScannerCalibration& calibration, std::vector<Caution>& cautions) {
  std::vector<double> outliers;
  std::vector<double> clipped;
  for (const CalibrationStep& step : calibration.steps) {
    if (step.outlier) {
      outliers.push_back(step.number);
    } else if (!step.used && step.reference_density < calibration.shown_from_density) {
      clipped.push_back(step.number);
    }
  }
  if (!outliers.empty()) {
    cautions.push_back({Severity::caution, fact_of(CautionKind::steps_left_out, outliers)});
  }
  if (!clipped.empty()) {
    cautions.push_back({Severity::caution, fact_of(CautionKind::steps_clipped, clipped)});
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
    cautions.push_back({Severity::caution, fact_of(CautionKind::reference_doubtful, {*part})});
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
  const bool told = device != ScannerDevice::unknown;
  calibration.device = info.camera && !told ? ScannerDevice::camera : device;
  calibration.source_files.push_back(info.file);
}

std::vector<Caution> cautions_of(const ScannerCalibration& calibration) {
  std::vector<Caution> cautions;
  add_step_cautions(calibration, cautions);
  if (calibration.of_silver()) {
    add_reference_caution(calibration, cautions);
  }
  if (calibration.of_silver() && !calibration.bare_code) {
    cautions.push_back({Severity::caution, fact_of(CautionKind::bare_light_unknown)});
  }
  if (calibration.of_silver() && !calibration.stray.measured) {
    cautions.push_back({Severity::note, fact_of(CautionKind::stray_light_untold)});
  }
  if (calibration.method == CalibrationMethod::nominal_wedge) {
    cautions.push_back({Severity::caution, fact_of(CautionKind::nominal_wedge)});
  }
  if (calibration.of_silver() && calibration.device == ScannerDevice::unknown) {
    cautions.push_back({Severity::note, fact_of(CautionKind::device_untold)});
  }
  if (calibration.shape_only) {
    cautions.push_back({Severity::caution, fact_of(CautionKind::shape_only)});
  }
  if (calibration.of_silver() && calibration.density_limit < wanted_limit) {
    cautions.push_back({Severity::caution, fact_of(CautionKind::limit_low)});
  }
  if (calibration.bits <= 8) {
    cautions.push_back({Severity::caution, fact_of(CautionKind::eight_bits)});
  }
  return cautions;
}

}  // namespace fogline
