#include "process/belief/development_kinetics.h"

#include <cmath>

namespace fogline {

double contrast_after(const DevelopmentCurve& curve, double minutes) {
  const double developing_min = minutes - curve.start_min;
  if (developing_min <= 0.0) {
    return 0.0;
  }
  return -curve.contrast_limit * std::expm1(-curve.rate_per_min * developing_min);
}

std::optional<double> minutes_for_contrast(const DevelopmentCurve& curve, double contrast) {
  if (contrast >= curve.contrast_limit) {
    return std::nullopt;
  }
  return curve.start_min - std::log1p(-contrast / curve.contrast_limit) / curve.rate_per_min;
}

std::optional<DevelopmentCurve> curve_from_doubled_time(double minutes, double contrast_once,
                                                        double contrast_twice) {
  const double gained = contrast_twice - contrast_once;
  if (gained <= 0.0 || gained >= contrast_once) {
    return std::nullopt;
  }
  DevelopmentCurve curve;
  curve.rate_per_min = std::log(contrast_once / gained) / minutes;
  curve.contrast_limit = contrast_once * contrast_once / (contrast_once - gained);
  return curve;
}

double rate_factor(double q10, double from_c, double to_c) {
  constexpr double degrees_of_q10 = 10.0;
  return std::pow(q10, (to_c - from_c) / degrees_of_q10);
}

}  // namespace fogline
