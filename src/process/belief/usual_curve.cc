#include "process/belief/usual_curve.h"

#include <cmath>
#include <stdexcept>

namespace fogline {

namespace {

/// How sharply the shoulder bends; 2 is very soft, 8 a corner (own choice: little depends on it
/// below density 1.8).
constexpr double shoulder_power = 4.0;
constexpr double speed_point_density = 0.10;
/// Radii of the two arcs.
constexpr double inner_arc = 0.2;
constexpr double outer_arc = 2.2;
/// Beyond this many toes the corner is the line itself, and exp() would overflow.
constexpr double far_from_toe = 40.0;

double density_on_line(double line, const UsualCurveShape& shape) {
  const double toe = shape.toe_density;
  const double rising = line > far_from_toe * toe ? line : toe * std::log1p(std::exp(line / toe));
  return rising / std::pow(1.0 + std::pow(rising / shape.maximum_density, shoulder_power),
                           1.0 / shoulder_power);
}

double line_of_density(double density, const UsualCurveShape& shape) {
  const double share = std::pow(density / shape.maximum_density, shoulder_power);
  const double rising = density / std::pow(1.0 - share, 1.0 / shoulder_power);
  const double toe = shape.toe_density;
  return rising > far_from_toe * toe ? rising : toe * std::log(std::expm1(rising / toe));
}

}  // namespace

UsualCurve::UsualCurve(const UsualCurveShape& shape, double contrast_index) : shape_(shape) {
  const double angle = std::atan(contrast_index);
  const double lower = inner_arc * std::sin(angle);
  const double upper = outer_arc * std::sin(angle);
  if (!(contrast_index > 0.0) || upper >= shape.maximum_density) {
    throw std::invalid_argument("contrast-out-of-reach");
  }
  slope_ = (line_of_density(upper, shape) - line_of_density(lower, shape)) /
           ((outer_arc - inner_arc) * std::cos(angle));
  line_at_speed_point_ = line_of_density(speed_point_density, shape);
}

double UsualCurve::density(double log_h) const {
  return density_on_line(line_at_speed_point_ + slope_ * log_h, shape_);
}

double UsualCurve::log_h(double density) const {
  return (line_of_density(density, shape_) - line_at_speed_point_) / slope_;
}

}  // namespace fogline
