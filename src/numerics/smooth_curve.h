#pragma once

#include <optional>
#include <vector>

namespace fogline {

/// A point that a curve should pass, and the standard uncertainty of its y.
struct CurvePoint {
  double x = 0.0;
  double y = 0.0;
  double doubt = 0.0;
};

/// A smooth curve through doubtful points, at given places.
struct SmoothCurve {
  std::vector<double> x;
  std::vector<double> y;
  /// Standard uncertainty of y(x) less y at the reference place.
  std::vector<double> doubt_from_reference;
  /// Logarithm of the points' probability, up to a constant of their number: compares data read in
  /// different ways (other x), not different points.
  double log_evidence = 0.0;
};

/// A straight line plus an integrated Wiener process, what a cubic smoothing spline is in the eyes
/// of Bayes (Wahba 1978): straight where points say nothing else, and beyond them. How much it may
/// bend, and a scatter that the points' own doubts don't hold, aren't chosen but averaged over,
/// weighted by the points' restricted likelihood (Patterson & Thompson 1971), so that few points
/// give honest doubts. Needs at least three points of different x, doubts above 0, `places` and
/// `reference` at or beyond no point by more than the caller cares; any order.
SmoothCurve fit_smooth_curve(const std::vector<CurvePoint>& points,
                             const std::vector<double>& places, double reference);

/// How far each point lies from the curve through all the others, in standard deviations of that
/// difference; the hyperparameters are found without it too. Needs at least four points.
std::vector<double> left_out_residuals(const std::vector<CurvePoint>& points);

}  // namespace fogline
