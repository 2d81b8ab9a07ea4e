#pragma once

#include <fogline/sensitometry/read_curve.h>

#include <optional>

namespace fogline {

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

}  // namespace fogline
