#pragma once

#include <optional>

namespace fogline {

/// A measured value with its expanded uncertainty in the sense of the Guide to the Expression of
/// Uncertainty in Measurement (JCGM 100): the interval value - u95 ... value + u95 covers the true
/// value 95 times in 100.
struct Quantity {
  double value = 0.0;
  double u95 = 0.0;
  /// The part of u95 that all rolls of this scanner and calibration share.
  std::optional<double> u95_common;
  /// Ends of the interval where it is one-sided or skew.
  std::optional<double> lower95;
  std::optional<double> upper95;
  /// The scan only tells a lower bound: the film is denser than the scan can see.
  bool at_least = false;

  friend bool operator==(const Quantity&, const Quantity&) = default;
};

/// Two-sided 95 % coverage factor of a normal distribution (JCGM 100 G.1.3).
inline constexpr double coverage_factor_95 = 1.96;

}  // namespace fogline
