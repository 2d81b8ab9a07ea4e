#pragma once

#include <fogline/sensitometry/read_curve.h>

#include <optional>
#include <vector>

namespace fogline {

/// Zones are a stop apart.
inline constexpr double stop_log_h = 0.30103;
inline constexpr int first_zone = 0;
inline constexpr int last_zone = 10;
/// A metered tone is placed on Zone V, and on Zone I the film is to reach the speed point (Adams,
/// *The Negative*, 1981; from memory).
inline constexpr int metered_zone = 5;
inline constexpr int speed_point_zone = 1;
inline constexpr int bright_zone = 8;

/// Net density that a tone of a zone gets.
struct ZoneDensity {
  int zone = 0;
  double log_h = 0.0;
  CurveReading net_density;

  friend bool operator==(const ZoneDensity&, const ZoneDensity&) = default;
};

/// What follows from where the zones lie on the curve.
struct ZonePlacement {
  /// As metered; false: Zone I laid on the speed point, since nobody metered.
  bool metered = false;
  std::vector<ZoneDensity> zones;
  /// From Zone I to Zone VIII: log exposure range that such a negative asks of the paper in
  /// diffusion light (ISO 6846, introduction).
  CurveReading density_range;
  /// Exposure index at which Zone I would reach the speed point; only where metered by an index.
  CurveReading exposure_index;
  /// The same by a meter's constant: metered tones lie ten times above the speed point of a film
  /// rated by ISO 6 (ISO 2720, constant from memory).
  CurveReading exposure_index_by_meter;

  friend bool operator==(const ZonePlacement&, const ZonePlacement&) = default;
};

/// `metered_log_h`: log H that the meter's reading gave, Zone V. `exposure_index`: that the meter
/// was set to.
ZonePlacement place_zones(const FittedCurve& curve, std::optional<double> metered_log_h,
                          std::optional<double> exposure_index);

/// Length in log H of what can be used: from the fractional-gradient point to where the slope falls
/// to the same number again, or, as a lower bound, as far as the curve can be told.
CurveReading useful_range(const FittedCurve& curve);

}  // namespace fogline
