#include "curve_truth.h"

#include "simulator/film_curve.h"

namespace bench {

namespace {

/// The greatest slope's straight line, by its definition.
double true_gamma(const std::function<double(double)>& net_density, double begin, double end) {
  constexpr double width = 0.3;
  const auto slope = [&](double x) {
    return (net_density(x + width / 2) - net_density(x - width / 2)) / width;
  };
  double steepest = 0.0;
  double at = 0.0;
  for (double x = begin + width / 2; x <= end - width / 2; x += 0.02) {
    if (slope(x) > steepest) {
      steepest = slope(x);
      at = x;
    }
  }
  double low = at;
  double high = at;
  while (low - 0.02 >= begin + width / 2 && slope(low - 0.02) >= 0.95 * steepest) {
    low -= 0.02;
  }
  while (high + 0.02 <= end - width / 2 && slope(high + 0.02) >= 0.95 * steepest) {
    high += 0.02;
  }
  low -= width / 2;
  high += width / 2;
  double xx = 0.0;
  double xy = 0.0;
  const double middle = 0.5 * (low + high);
  for (int i = 0; i <= 400; ++i) {
    const double x = low + (high - low) * i / 400;
    xx += (x - middle) * (x - middle);
    xy += (x - middle) * net_density(x);
  }
  return xy / xx;
}

double speed_point(const std::function<double(double)>& net_density, double near_log_h) {
  constexpr double density = 0.10;
  double low = near_log_h - 2.0;
  double high = near_log_h + 2.0;
  for (int i = 0; i < 50; ++i) {
    const double middle = 0.5 * (low + high);
    (net_density(middle) < density ? low : high) = middle;
  }
  return 0.5 * (low + high);
}

}  // namespace

CurveNumbers numbers_of_curve(const std::function<double(double)>& net_density,
                              const CurveRange& range) {
  const double at = speed_point(net_density, range.near_log_h);
  return {filmsim::two_arc_contrast(net_density, at - 3.0, at + 1.0).contrast_index,
          filmsim::average_gradient(net_density, at),
          true_gamma(net_density, range.begin_log_h, range.end_log_h), at};
}

}  // namespace bench
