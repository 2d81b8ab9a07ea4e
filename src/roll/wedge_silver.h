#pragma once

#include <fogline/density/scanner_calibration.h>

#include <optional>

namespace fogline {

/// Fog in clear film is silver, about this much: the part that the angle of light touches.
inline constexpr double usual_fog = 0.05;

/// What a calibration by a silver wedge leaves of the angle of light. Directed light reads silver
/// Callier's factor too dense (Callier 1909), a wedge's as much as the film's, so the calibration
/// takes it out; but the film's base is no silver: dye and plastic read true, and the calibration
/// reads them too low. Under dense silver, where the factor has risen and the wedge's scale is
/// steeper, more of the base is missing than in clear film.
struct WedgeSilver {
  /// Share of the base's density that is missing in clear film and under dense silver, and half
  /// widths (95 %) of their doubt.
  double base_share = 0.0;
  double base_share_95 = 0.0;
  double dense_base_share = 0.0;
  double dense_base_share_95 = 0.0;
  /// Film and wedge differ in their factor: half width (95 %), share of the net density.
  double net_share_95 = 0.0;
};

/// By kind of device; nothing for calibrations without silver.
std::optional<WedgeSilver> wedge_silver(const ScannerCalibration& calibration);

}  // namespace fogline
