#include "roll/wedge_silver.h"

namespace fogline {

namespace {

constexpr WedgeSilver of_cameras{0.015, 0.015, 0.035, 0.01};
constexpr WedgeSilver of_others{0.12, 0.12, 0.22, 0.045};

}  // namespace

WedgeSilver wedge_silver(const ScannerCalibration& calibration) {
  switch (calibration.method) {
    case CalibrationMethod::wedge:
    case CalibrationMethod::nominal_wedge:
      return calibration.camera ? of_cameras : of_others;
    case CalibrationMethod::layers:
    case CalibrationMethod::bracket:
      break;
  }
  return {};
}

}  // namespace fogline
