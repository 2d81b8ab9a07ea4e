#pragma once

#include <optional>

namespace fogline {

/// How contrast grows in the developer, at one temperature, strength and agitation:
/// c(t) = contrast_limit (1 - exp(-rate_per_min (t - start_min))), and 0 before the start. First
/// order: Sheppard & Mees, *Investigations on the Theory of the Photographic Process* (1907); with
/// a start (induction) time: Nietz, *The Theory of Development* (1922).
struct DevelopmentCurve {
  /// Contrast index that no time exceeds.
  double contrast_limit = 0.0;
  double rate_per_min = 0.0;
  /// Minutes before anything shows.
  double start_min = 0.0;
};

/// Contrast index after `minutes`.
double contrast_after(const DevelopmentCurve& curve, double minutes);

/// Minutes that give `contrast` (above 0); nothing where the curve never reaches it.
std::optional<double> minutes_for_contrast(const DevelopmentCurve& curve, double contrast);

/// The curve through two contrasts, after `minutes` and after twice that time, started at once:
/// k = ln(c1 / (c2 - c1)) / t, limit = c1^2 / (2 c1 - c2) (Sheppard & Mees 1907). Nothing where c2
/// isn't between c1 and twice c1: no finite limit then fits.
std::optional<DevelopmentCurve> curve_from_doubled_time(double minutes, double contrast_once,
                                                        double contrast_twice);

/// Factor of the rate of development from one temperature to another, degrees Celsius, where 10
/// degrees make the factor `q10`; the time changes by its inverse. 1 at the same temperature.
double rate_factor(double q10, double from_c, double to_c);

}  // namespace fogline
