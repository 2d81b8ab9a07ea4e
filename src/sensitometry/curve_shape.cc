#include <fogline/sensitometry/curve_shape.h>

#include <cmath>
#include <numbers>

namespace fogline {

namespace {

/// From level 0 to the line y = u, and its slope.
struct Bend {
  double value = 0.0;
  double slope = 0.0;
};

Bend bend(BendFamily family, double u) {
  switch (family) {
    case BendFamily::logistic: {
      const double small = std::exp(-std::abs(u));
      return {std::max(u, 0.0) + std::log1p(small),
              u > 0.0 ? 1.0 / (1.0 + small) : small / (1.0 + small)};
    }
    case BendFamily::normal: {
      const double share = 0.5 * std::erfc(-u / std::numbers::sqrt2);
      const double peak = std::exp(-0.5 * u * u) * std::numbers::inv_sqrtpi / std::numbers::sqrt2;
      return {u * share + peak, share};
    }
    case BendFamily::hyperbolic: {
      const double root = std::sqrt(u * u + 1.0);
      // Without loss of digits where u is far below 0.
      return {u > 0.0 ? 0.5 * (u + root) : 0.5 / (root - u),
              u > 0.0 ? 0.5 * (1.0 + u / root) : 0.5 / (root * (root - u))};
    }
  }
  return {};
}

}  // namespace

ShapedDensity shaped_density(const CurveShape& shape, double log_h) {
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

}  // namespace fogline
