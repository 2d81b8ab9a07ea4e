#pragma once

#include <fogline/sensitometry/characteristic_curve.h>

#include <optional>

namespace fogline {

/// Net density of the speed point (ISO 6:1993).
inline constexpr double speed_point_density = 0.10;
/// Log H from the speed point to the second point of the ISO 6 triangle.
inline constexpr double iso_triangle_log_h = 1.30;
/// The usual span of an average gradient.
inline constexpr double usual_gradient_log_h = 1.50;
/// Zone I to Zone VIII: seven stops.
inline constexpr double zone_range_log_h = 2.107;

/// The two-arc construction of contrast index (Niederpruem, Nelson & Yule, Phot. Sci. Eng. 10
/// (1966) 35): a centre on the base-plus-fog line, the curve's crossings of arcs of radius 0.2 and
/// 2.2 about it, all three on one straight line, whose slope is the index.
struct TwoArcs {
  double contrast_index = 0.0;
  double centre_log_h = 0.0;
  double inner_log_h = 0.0;
  double outer_log_h = 0.0;
};
inline constexpr double inner_arc = 0.2;
inline constexpr double outer_arc = 2.2;

/// Nothing where the curve ends before the outer arc or never rises to it.
std::optional<TwoArcs> two_arcs(const CurveTable& curve);

/// Mean slope from the speed point over `log_h_range`; nothing without a speed point.
std::optional<double> average_gradient(const CurveTable& curve, double log_h_range);

/// The straight line of the curve between two log H: slope by least squares over the longest run
/// about the steepest place whose slope stays within 5 % of the greatest, slopes being told over
/// 0.3 of log H (common practice, no source).
struct StraightLine {
  double gamma = 0.0;
  double begin_log_h = 0.0;
  double end_log_h = 0.0;
};
std::optional<StraightLine> straight_line(const CurveTable& curve, double begin_log_h,
                                          double end_log_h);

/// Log H of the fractional-gradient speed point: the toe's slope there is 0.3 of the mean slope
/// over the 1.50 of log H to its right (Jones 1939; Nelson, Phot. Sci. Eng. 4 (1960)).
std::optional<double> fractional_gradient_point(const CurveTable& curve);

/// Log H from the speed point down to about the fractional-gradient point, from the density that
/// the curve gains over 1.30 of log H (Nelson & Simonds, JOSA 46 (1956) 324; formula from memory):
/// 0.83 - 0.86 x + 0.24 x². For usual toes and gains of 0.4 to 1.2.
double delta_x(double density_gain);

}  // namespace fogline
