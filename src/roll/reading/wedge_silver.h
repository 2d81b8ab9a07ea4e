#pragma once

#include <fogline/density/scanner_calibration.h>

namespace fogline {

/// What is known of the angle of light where a silver wedge calibrated. Directed light reads silver
/// Callier's factor too dense (Callier 1909), a wedge's as much as the film's, so any factor that
/// is taken for both reads silver true; but the film's base is no silver, and is read as wrong as
/// the factor is.
struct WedgeSilver {
  /// The factor taken.
  double callier = 1.0;
  /// Share of the base's density that may be misread in clear film and under dense silver: half
  /// widths (95 %).
  double base_share_95 = 0.0;
  double dense_base_share_95 = 0.0;
  /// Film and wedge differ in their factor: half width (95 %), share of the net density.
  double net_share_95 = 0.0;
};

/// By kind of device.
WedgeSilver wedge_silver(ScannerDevice device);

}  // namespace fogline
