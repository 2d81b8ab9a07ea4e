#include "roll/reading/scan_calibration.h"

#include "roll/reading/place_on_scan.h"
#include "roll/reading/scanner_settings.h"

#include <algorithm>
#include <cmath>

namespace fogline {

namespace {

double full_code(int bits) {
  return bits <= 8 ? 255.0 : 65535.0;
}

StepMeasurement measured_step(const CalibrationStep& step, const ScannerCalibration& calibration) {
  StepMeasurement measured;
  measured.number = step.number;
  measured.corners_px = step.corners_px;
  measured.box_px = box_around(step.corners_px);
  for (std::size_t c = 0; c < step.code.size(); ++c) {
    measured.code[c] = step.code[c] * full_code(calibration.bits);
  }
  measured.reference_density = step.reference_density;
  measured.outlier = step.outlier;
  measured.left_out = step.left_out;
  measured.density.value = step.density;
  const double certificate = std::hypot(calibration.certificate_doubt * std::min(1.0, step.density),
                                        calibration.slope_doubt_share * step.density);
  measured.density.u95 = std::hypot(step.u95, coverage_factor_95 * certificate);
  measured.density.u95_common = coverage_factor_95 * certificate;
  if (!std::isfinite(step.density) || step.density > calibration.shown_to_density) {
    measured.density.value = calibration.shown_to_density;
    measured.density.lower95 = calibration.shown_to_density - measured.density.u95;
    measured.density.at_least = true;
  }
  return measured;
}

}  // namespace

CalibrationUse use_of_calibration(const ScanScanner& scanner, const ScanInfo& info, ZeroSource zero,
                                  const std::vector<StripReading>& readings) {
  CalibrationUse use;
  const ScannerCalibration* calibration = scanner.calibration();
  if (calibration == nullptr) {
    use.calibration = Unknown::not_calibrated;
    return use;
  }
  ScanCalibration used;
  used.method = calibration->method;
  used.shape_only = calibration->shape_only;
  used.date = calibration->date;
  used.checksum = calibration->checksum;
  used.reference = calibration->reference;
  used.shown_to_density = calibration->shown_to_density;
  used.own_wedge = scanner.own_wedge().has_value();
  if (scanner.own_wedge()) {
    for (const CalibrationStep& step : calibration->steps) {
      use.steps.push_back(measured_step(step, *calibration));
    }
    use.cautions = scanner.own_wedge()->cautions;
  }
  for (const StripReading& reading : readings) {
    for (const Caution& caution : settings_cautions(*calibration, info, reading)) {
      used.same_settings = false;
      use.cautions.push_back(caution);
    }
  }
  if (zero == ZeroSource::scanner_file) {
    use.cautions.push_back({Severity::caution, fact_of(CautionKind::zero_remembered)});
  }
  if (calibration->shape_only) {
    use.cautions.push_back({Severity::caution, fact_of(CautionKind::scanner_shape_only)});
  }
  use.calibration = used;
  return use;
}

}  // namespace fogline
