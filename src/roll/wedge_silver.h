#pragma once

#include <fogline/density/scanner_calibration.h>

namespace fogline {

/// Fog in clear film is silver, about this much: the part that the angle of light touches.
inline constexpr double usual_fog = 0.05;

/// What a calibration by a silver wedge leaves of the angle of light. Directed light reads silver
/// Callier's factor too dense (Callier 1909), a wedge's as much as the film's, so the calibration
/// takes it out; but the film's base is no silver: dye and plastic read true, and the calibration
/// reads them too low.
struct WedgeSilver {
  /// Share of the base's density that is missing, and the half width (95 %) of its doubt in clear
  /// film and under dense silver (which bends the wedge's scale steeper, so that more is missing).
  double base_share = 0.0;
  double base_share_95 = 0.0;
  double dense_base_share_95 = 0.0;
  /// Film and wedge differ in their factor: half width (95 %), share of the net density.
  double net_share_95 = 0.0;
};

/// By kind of device (common practice, no source: factor 1.0 to 1.05 over a large near panel, 1.0 to
/// 1.4 for flatbeds and collimated scanners, half of it at a base's density, where silver scatters
/// less; wedge and film apart by 3 to 5 %). All zero for calibrations without silver.
WedgeSilver wedge_silver(const ScannerCalibration& calibration);

}  // namespace fogline
