#pragma once

namespace fogline {

/// Shape of the usual characteristic curve, all densities net of base plus fog.
struct UsualCurveShape {
  /// Density over which the toe bends.
  double toe_density = 0.15;
  double maximum_density = 2.7;
};

/// A characteristic curve of given contrast index: a softened corner for the toe (density =
/// toe * ln(1 + exp(line / toe)), a smooth corner between zero and a straight line) and a power law
/// for the shoulder. Log exposure counts from the speed point, where the density is 0.10.
///
/// The contrast index fixes the slope in closed form: by the two-arc construction (Niederpruem,
/// Nelson & Yule 1966) a curve of index tan(a) crosses the densities 0.2 sin(a) and 2.2 sin(a) at
/// log exposures 2.0 cos(a) apart.
class UsualCurve {
 public:
  /// `contrast_index` from 0.1 to 1.5. Throws std::invalid_argument where the maximum density is
  /// too low for it.
  UsualCurve(const UsualCurveShape& shape, double contrast_index);

  /// Net density, 0 to the maximum; rising.
  [[nodiscard]] double density(double log_h) const;
  /// Log exposure of a net density strictly between 0 and the maximum.
  [[nodiscard]] double log_h(double density) const;
  /// Slope of the straight line that the curve nears between toe and shoulder.
  [[nodiscard]] double line_slope() const { return slope_; }

 private:
  UsualCurveShape shape_;
  double slope_ = 0.0;
  double line_at_speed_point_ = 0.0;
};

}  // namespace fogline
