#include "roll/wedge_silver.h"

namespace fogline {

namespace {

// Callier's factor Q is 1.0 to 1.05 over a large near panel, 1.0 to 1.2 on flatbeds, 1.2 to 1.4 in
// collimated film scanners (common practice, no source). It grows with density, as
// 1 + (Q - 1)(1 - exp(-D / 0.3)), so that clear film of 0.25 base and 0.05 fog is read 0.73 (Q - 1)
// of its base too low; the slope of silver's scale reaches 1 + 1.1 (Q - 1), and under dense silver
// about as many times (Q - 1) of the base are missing. Middle of each range and
// the half width that holds 95 of 100 in it; wedge and film differ in Q by 3 to 5 % where it is
// large.
constexpr WedgeSilver of_cameras{0.018, 0.017, 0.029, 0.028, 0.01};
constexpr WedgeSilver of_flatbeds{0.073, 0.069, 0.115, 0.11, 0.03};
constexpr WedgeSilver of_film_scanners{0.22, 0.071, 0.34, 0.10, 0.05};
constexpr WedgeSilver of_others{0.14, 0.145, 0.225, 0.25, 0.045};

}  // namespace

std::optional<WedgeSilver> wedge_silver(const ScannerCalibration& calibration) {
  if (calibration.method != CalibrationMethod::wedge &&
      calibration.method != CalibrationMethod::nominal_wedge) {
    return std::nullopt;
  }
  switch (calibration.device) {
    case ScannerDevice::camera:
      return of_cameras;
    case ScannerDevice::flatbed:
      return of_flatbeds;
    case ScannerDevice::film_scanner:
      return of_film_scanners;
    case ScannerDevice::unknown:
      break;
  }
  return of_others;
}

}  // namespace fogline
