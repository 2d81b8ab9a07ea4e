#pragma once

#include <fogline/base/known.h>
#include <fogline/base/quantity.h>
#include <fogline/sensitometry/characteristic_curve.h>

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

}  // namespace fogline
