#pragma once

#include <array>

namespace fogline {

/// How a toe bends into the straight line, and that into the shoulder: by the integral of a
/// logistic or of a normal distribution of sensitivities (both leave the level exponentially or
/// faster), or along a hyperbola (slowly).
enum class BendFamily { logistic, normal, hyperbolic };
inline constexpr std::array bend_families{BendFamily::logistic, BendFamily::normal,
                                          BendFamily::hyperbolic};

/// A characteristic curve (Hurter & Driffield 1890) of toe, straight line and shoulder: net density
/// by log H. Rises from 0 to `greatest_density` everywhere, whatever the numbers.
struct CurveShape {
  BendFamily family = BendFamily::logistic;
  /// Of the straight line, above 0.
  double slope = 0.65;
  /// Where the straight line meets density 0 (the inertia point).
  double inertia_log_h = 0.0;
  /// Log H over which the toe bends, above 0.
  double toe_width = 0.2;
  /// Net density where the shoulder levels, above 0.
  double greatest_density = 2.3;
  /// Density over which the shoulder bends, above 0.
  double shoulder_width = 0.25;
};

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
