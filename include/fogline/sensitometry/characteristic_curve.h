#pragma once

#include <fogline/base/known.h>
#include <fogline/sensitometry/curve_shape.h>
#include <fogline/sensitometry/exposed_step.h>

#include <array>
#include <cstdint>
#include <vector>

namespace fogline {

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
