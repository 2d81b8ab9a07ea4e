#pragma once

#include <array>

namespace fogline {

/// What makes the curve. Three join toe, straight line and shoulder, each of its own width, by
/// bends: the integral of a logistic or of a normal distribution of sensitivities (both leave the
/// level exponentially or faster), or a hyperbola (slowly). The fourth is one S without any
/// straight line: the share of grains developed where a grain needs several hits, so that the toe
/// rises with a power of exposure, and the grains' sensitivities follow a gamma distribution, 1 -
/// (1 + H^n / p)^-p (Burr, Ann. Math. Statist. 13 (1942) 215, type XII; citation from memory).
enum class ShapeFamily { logistic, normal, hyperbolic, dispersed_grains };
inline constexpr std::array shape_families{ShapeFamily::logistic, ShapeFamily::normal,
                                           ShapeFamily::hyperbolic, ShapeFamily::dispersed_grains};

/// A characteristic curve (Hurter & Driffield 1890): net density by log H. Rises from 0 to
/// `greatest_density` everywhere, whatever the numbers.
struct CurveShape {
  ShapeFamily family = ShapeFamily::logistic;
  /// Of the straight line, or the steepest of the S; above 0.
  double slope = 0.65;
  /// Where the straight line, or the tangent at the steepest place, meets density 0 (the inertia
  /// point).
  double inertia_log_h = 0.0;
  /// Log H over which the toe bends, above 0. Dispersed grains have theirs from the slope.
  double toe_width = 0.2;
  /// Net density where the shoulder levels, above 0.
  double greatest_density = 2.3;
  /// Density over which the shoulder bends, above 0. Dispersed grains: p is `symmetric_shoulder`
  /// over it; p = 1 is a symmetric S, a narrow shoulder is sharper than the toe.
  double shoulder_width = 0.25;
};
inline constexpr double symmetric_shoulder = 0.25;

/// Net density at a log H, and how fast it changes with it and with the shape: with the logarithms
/// of slope, toe width, greatest density and shoulder width, and with the inertia point itself.
struct ShapedDensity {
  double density = 0.0;
  double by_log_h = 0.0;
  double by_log_slope = 0.0;
  double by_inertia = 0.0;
  double by_log_toe = 0.0;
  double by_log_greatest = 0.0;
  double by_log_shoulder = 0.0;
};

ShapedDensity shaped_density(const CurveShape& shape, double log_h);

}  // namespace fogline
