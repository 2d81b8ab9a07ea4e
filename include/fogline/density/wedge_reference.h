#pragma once

#include <optional>
#include <string>
#include <vector>

namespace fogline {

/// One step of a wedge as its certificate (or its nominal step) gives it.
struct ReferenceStep {
  /// As the reference names it.
  std::string label;
  /// Visual diffuse density.
  double density = 0.0;
  /// Expanded uncertainty (95 %) of it where the reference gives one.
  std::optional<double> u95;
};

/// What is known of a wedge's densities.
struct WedgeReference {
  /// As given: a file's name, or "21x0.15".
  std::string name;
  /// Lightest first, strictly rising.
  std::vector<ReferenceStep> steps;
  /// True for `--steps`: densities as designed, nobody measured them.
  bool nominal = false;
};

/// Expanded uncertainty of a certified step where the reference tells none (an instrument's usual
/// +-0.02 D; common practice, no source).
inline constexpr double usual_certificate_u95 = 0.02;

/// A nominal wedge of `steps` steps (5 to 41) rising by `step_density` (above 0): 0.05, 0.05 +
/// step,
/// ...; the first step of commercial tablets is about 0.05 (references: pages of makers; from
/// memory).
WedgeReference nominal_wedge(int steps, double step_density);

}  // namespace fogline
