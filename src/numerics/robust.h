#pragma once

#include <span>
#include <vector>

namespace fogline {

/// Percentile of a sample, `share` in [0, 1], with linear interpolation between order statistics
/// (Hyndman & Fan 1996, type 7). NaN for an empty sample. Samples must not hold NaN.
double percentile(std::span<const double> values, double share);

/// Middle value of a sample; NaN for an empty one.
double median(std::span<const double> values);

/// Factor that makes the median absolute deviation of a normal sample its standard deviation:
/// 1 / Phi^-1(3/4).
inline constexpr double mad_to_sd = 1.482602218505602;

/// Where a sample lies and how wide it is, little disturbed by a minority of wild values.
struct LocationScale {
  double location = 0.0;
  /// Scaled median absolute deviation: the standard deviation of a normal sample.
  double scale = 0.0;
};

/// Median and scaled median absolute deviation (Hampel 1974). NaN for an empty sample.
LocationScale robust_location(std::span<const double> values);

}  // namespace fogline
