#pragma once

#include <fogline/sensitometry/characteristic_curve.h>
#include <fogline/sensitometry/film_speed.h>
#include <fogline/sensitometry/read_curve.h>
#include <fogline/sensitometry/zones.h>

#include <optional>

namespace fogline {

/// Where log H counts from.
struct ExposureScale {
  /// Lux seconds; else from the metered exposure, or minus the density of a wedge.
  bool absolute = false;
  /// Log H of what the meter said (Zone V).
  std::optional<double> metered_log_h;
  /// Exposure index that the meter was set to.
  std::optional<double> exposure_index;

  friend bool operator==(const ExposureScale&, const ExposureScale&) = default;
};

/// A characteristic curve and all that is read from it.
struct Sensitometry {
  ExposureScale scale;
  CharacteristicCurve curve;
  CurveReadings readings;
  IsoSpeed iso;
  ZonePlacement placement;
  CurveReading useful_range_log_h;

  friend bool operator==(const Sensitometry&, const Sensitometry&) = default;
};

/// Reads all of it from a fitted curve, of which the draws stay behind.
Sensitometry read_sensitometry(const FittedCurve& curve, const ExposureScale& scale);

}  // namespace fogline
