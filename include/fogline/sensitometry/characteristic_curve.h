#pragma once

#include <fogline/base/known.h>

#include <array>
#include <cmath>
#include <cstdint>
#include <optional>
#include <string>
#include <vector>

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

/// One area of film that got a known exposure, and the density it reached.
struct ExposedStep {
  std::string label;
  /// Log exposure, on any scale that is common to all steps, and the standard uncertainty of this
  /// one alone (a shutter time, a filter).
  double log_h = 0.0;
  double log_h_doubt = 0.0;
  /// Density, base included, and the standard uncertainty of this one alone.
  double density = 0.0;
  double density_doubt = 0.0;
  /// Why the curve takes no notice of it; absent where it does.
  std::optional<WhyUnknown> left_out;

  friend bool operator==(const ExposedStep&, const ExposedStep&) = default;
};

/// A doubt that all steps share and that changes with density: stray light, a scanner's response.
/// Standard uncertainty at rising net densities, straight between them; all of one sign.
struct CommonDoubt {
  std::vector<double> net_density;
  std::vector<double> doubt;

  [[nodiscard]] double at(double net_density_there) const;

  friend bool operator==(const CommonDoubt&, const CommonDoubt&) = default;
};

/// Exposed steps, and what is known of all of them together.
struct ExposedSteps {
  std::vector<ExposedStep> steps;
  /// Base plus fog read elsewhere, and its standard uncertainty relative to the steps.
  std::optional<double> base_fog;
  double base_fog_doubt = 0.0;
  /// Standard uncertainties common to all steps. As shares: of every net density (the scanner's
  /// scale, the angle of light), and of every difference of log H (a nominal wedge's slope).
  double density_share_doubt = 0.0;
  std::vector<CommonDoubt> common_doubts;
  /// Net density beyond which the common doubts are too great for a slope.
  double net_limit = INFINITY;
  double log_h_share_doubt = 0.0;
};

/// Net density by log H at even distances; never falls.
struct CurveTable {
  double begin_log_h = 0.0;
  double step_log_h = 0.02;
  std::vector<double> net_density;

  [[nodiscard]] double end_log_h() const;
  /// Straight between the table's places, level beyond its ends.
  [[nodiscard]] double density_at(double log_h) const;
  /// The least log H with that net density; beyond the table where it isn't reached, infinite.
  [[nodiscard]] double log_h_at(double net_density) const;
  /// Mean slope over `width` of log H about a place.
  [[nodiscard]] double slope_at(double log_h, double width) const;

  friend bool operator==(const CurveTable&, const CurveTable&) = default;
};

/// A characteristic curve with all that is known of its doubt.
struct CharacteristicCurve {
  /// Mean of the most probable curves under each assumption, by their weights, on which readings
  /// are taken; its standard uncertainty at the same places.
  CurveTable mean;
  std::vector<double> doubt;
  double base_fog = 0.0;
  double base_fog_doubt = 0.0;
  /// The family that the steps favour, and the probability of each by them.
  ShapeFamily family = ShapeFamily::logistic;
  std::array<double, shape_families.size()> family_probability{};
  /// Range of the exposures that took part.
  double begin_log_h = 0.0;
  double end_log_h = 0.0;
  /// Up to here a slope is told: the greatest exposure, or where density passes what the scan can
  /// tell.
  double sure_end_log_h = 0.0;
  std::vector<ExposedStep> steps;
  /// Root mean square of the used steps' distances from the curve.
  double residual_rms = 0.0;

  friend bool operator==(const CharacteristicCurve&, const CharacteristicCurve&) = default;
};

/// A curve as it was fitted, for those who read numbers from it.
struct FittedCurve : CharacteristicCurve {
  /// Curves that the steps leave possible, each as probable as the other: a reading strays as its
  /// readings on these do (JCGM 101).
  std::vector<CurveTable> draws;
};

/// Steps that a curve needs.
inline constexpr int fewest_exposed_steps = 5;

/// Fits 5 to 41 steps. Net density is a shape (`CurveShape`) whose log H is warped by a small
/// smooth function that nobody chose: so it rises everywhere, leaves from base plus fog and levels
/// beyond the data, and isn't bound to the shape. Four families of shapes, the warp's size and
/// length, and how far the steps' own doubts are believed, are weighed by the probability that each
/// gives to the steps (Laplace's approximation; MacKay 1992), none is chosen beforehand. Exposures
/// have errors of their own (errors in both variables). A step that lies off the curve through all
/// others beyond 4.5 standard deviations is left out and named, up to a fifth of them. Absent
/// where fewer than five steps can be used or none rises over the others. The same steps and seed
/// give the same curve.
Known<FittedCurve> fit_characteristic_curve(const ExposedSteps& exposed, std::uint64_t seed = 1);

}  // namespace fogline
