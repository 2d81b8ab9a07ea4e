#include <fogline/sensitometry/characteristic_curve.h>

#include <cmath>
#include <numbers>

namespace fogline {

namespace {

/// From level 0 to the line y = u, and its slope.
struct Bend {
  double value = 0.0;
  double slope = 0.0;
};

Bend bend(ShapeFamily family, double u) {
  switch (family) {
    case ShapeFamily::logistic: {
      const double small = std::exp(-std::abs(u));
      return {std::max(u, 0.0) + std::log1p(small),
              u > 0.0 ? 1.0 / (1.0 + small) : small / (1.0 + small)};
    }
    case ShapeFamily::normal: {
      const double share = 0.5 * std::erfc(-u / std::numbers::sqrt2);
      const double peak = std::exp(-0.5 * u * u) * std::numbers::inv_sqrtpi / std::numbers::sqrt2;
      return {u * share + peak, share};
    }
    case ShapeFamily::hyperbolic: {
      const double root = std::sqrt(u * u + 1.0);
      // Without loss of digits where u is far below 0.
      return {u > 0.0 ? 0.5 * (u + root) : 0.5 / (root - u),
              u > 0.0 ? 0.5 * (1.0 + u / root) : 0.5 / (root * (root - u))};
    }
    case ShapeFamily::dispersed_grains:
      break;
  }
  return {};
}

ShapedDensity joined_by_bends(const CurveShape& shape, double log_h) {
  // Toe and line first: they would rise for ever.
  const double from_inertia = log_h - shape.inertia_log_h;
  const Bend toe = bend(shape.family, from_inertia / shape.toe_width);
  const double rising = shape.slope * shape.toe_width * toe.value;
  // The shoulder takes away what lies above the level; nothing at density 0.
  const double above = (rising - shape.greatest_density) / shape.shoulder_width;
  const double above_at_zero = -shape.greatest_density / shape.shoulder_width;
  const Bend shoulder = bend(shape.family, above);
  const Bend none = bend(shape.family, above_at_zero);
  const double kept = 1.0 - shoulder.slope;
  const double taken = shape.shoulder_width * (shoulder.value - none.value);
  ShapedDensity at;
  at.density = rising - taken;
  at.by_log_h = kept * shape.slope * toe.slope;
  at.by_log_slope = kept * rising;
  at.by_inertia = -at.by_log_h;
  at.by_log_toe = kept * (rising - shape.slope * from_inertia * toe.slope);
  at.by_log_greatest = shape.greatest_density * (shoulder.slope - none.slope);
  at.by_log_shoulder =
      -taken + shape.shoulder_width * (above * shoulder.slope - above_at_zero * none.slope);
  return at;
}

ShapedDensity of_dispersed_grains(const CurveShape& shape, double log_h) {
  const double p = symmetric_shoulder / shape.shoulder_width;
  const double greatest = shape.greatest_density;
  // Steepest where H^n is 1: the share left undeveloped there, and log H from the inertia point.
  const double left = std::pow(1.0 + 1.0 / p, -p);
  const double width = greatest * left / (1.0 + 1.0 / p) / shape.slope;
  const double ahead = greatest * (1.0 - left) / shape.slope;
  const double from_inertia = log_h - shape.inertia_log_h;
  const double log_power = (from_inertia - ahead) / width;
  // Logarithm of 1 + H^n / p without overflow, and H^n over it.
  const double log_sum = log_power > 0.0 ? log_power + std::log(std::exp(-log_power) + 1.0 / p)
                                         : std::log1p(std::exp(log_power) / p);
  const double part = std::exp(log_power - log_sum);
  const double undeveloped = std::exp(-p * log_sum);
  const double by_log_power = greatest * part * undeveloped;
  ShapedDensity at;
  at.density = -greatest * std::expm1(-p * log_sum);
  at.by_log_h = by_log_power / width;
  at.by_log_slope = at.by_log_h * from_inertia;
  at.by_inertia = -at.by_log_h;
  at.by_log_greatest = at.density - at.by_log_slope;
  // With the logarithm of p: of the share itself, and of the place on it.
  const double log_width_by = 1.0 - p * std::log1p(1.0 / p);
  const double ahead_by =
      greatest / shape.slope * left * (p * std::log1p(1.0 / p) - 1.0 / (1.0 + 1.0 / p));
  const double share_by = greatest * undeveloped * (p * log_sum - part);
  at.by_log_shoulder = by_log_power * (log_power * log_width_by + ahead_by / width) - share_by;
  return at;
}

}  // namespace

ShapedDensity shaped_density(const CurveShape& shape, double log_h) {
  return shape.family == ShapeFamily::dispersed_grains ? of_dispersed_grains(shape, log_h)
                                                       : joined_by_bends(shape, log_h);
}

}  // namespace fogline
