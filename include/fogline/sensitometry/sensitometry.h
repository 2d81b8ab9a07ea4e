#pragma once

#include <fogline/base/known.h>
#include <fogline/base/quantity.h>
#include <fogline/sensitometry/characteristic_curve.h>

#include <optional>
#include <vector>

namespace fogline {

/// A number read from a curve, or why it can't be read.
using CurveReading = Known<Quantity>;

/// What is read from a characteristic curve.
struct CurveReadings {
  CurveReading contrast_index;
  /// Mean slope from the speed point over 1.30, 1.50, 1.80 and 2.107 (Zone I to VIII) of log H.
  CurveReading gradient_130;
  CurveReading gradient_150;
  CurveReading gradient_180;
  CurveReading gradient_zones;
  CurveReading gamma;
  /// Length of the straight line in log H.
  CurveReading straight_length;
  CurveReading speed_point_log_h;
  /// Density gained over 1.30 of log H from the speed point: 0.75 to 0.85 makes an ISO 6 triangle.
  CurveReading triangle_gain;
  CurveReading fractional_gradient_log_h;
  /// The same point told from the triangle's gain by Delta-X.
  CurveReading delta_x_log_h;
  /// Log H from the speed point to where the straight line begins, and the slope at the speed point
  /// as a part of gamma: a long, flat toe holds shadows close together.
  CurveReading toe_length;
  CurveReading toe_slope_part;
  /// Net density where the straight line ends in a shoulder.
  CurveReading shoulder_density;

  friend bool operator==(const CurveReadings&, const CurveReadings&) = default;
};

/// Reads them from the curve's mean, with doubts from its draws. What would need the curve further
/// beyond the exposures than 0.3 of log H is absent with its reason.
CurveReadings read_curve(const FittedCurve& curve);

/// A speed as ISO 6 writes it: 100/21.
struct IsoSpeedNumber {
  int arithmetic = 0;
  int degrees = 0;

  friend bool operator==(const IsoSpeedNumber&, const IsoSpeedNumber&) = default;
};

/// Rounded from log H of the speed point in lux seconds: S = 0.80 / H, degrees
/// 1 + 10 log10(0.80 / H) to the nearest whole, and the arithmetic number of the row (ISO 6:1993
/// and ISO 5800; values from memory). Nothing outside 4/7 to 3200/36.
std::optional<IsoSpeedNumber> iso_speed_number(double speed_point_log_h);

/// Tolerance of the ISO 6 triangle: 0.80 ± 0.05 gained over 1.30 (value from memory).
inline constexpr double iso_triangle_gain = 0.80;
inline constexpr double iso_triangle_tolerance = 0.05;

enum class TriangleState { met, not_met, cant_tell };

/// Whether the development was that of a standard speed, and the speed it then has.
struct IsoSpeed {
  TriangleState triangle = TriangleState::cant_tell;
  /// Probability that the gain lies within the tolerance.
  Known<double> probability = Unknown::scan_silent;
  /// 0.80 / H of the speed point; absent without an absolute exposure or where the triangle isn't
  /// met.
  CurveReading speed;
  std::optional<IsoSpeedNumber> number;
  /// 0.80 / H times 10^(Delta-X - 0.296): the speed by fractional gradient (Nelson & Simonds 1956),
  /// at any development; absent without an absolute exposure.
  CurveReading effective_speed;

  friend bool operator==(const IsoSpeed&, const IsoSpeed&) = default;
};

/// `absolute`: the curve's log H is of lux seconds.
IsoSpeed read_iso_speed(const FittedCurve& curve, const CurveReadings& readings, bool absolute);

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
