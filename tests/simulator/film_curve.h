// The characteristic curve of an invented film: net silver density against log10 exposure.
//
// Five families, so that whatever is fitted to the scans is never the family they were drawn
// from alone: a soft toe with a shoulder, a logistic, a toe and shoulder joined by a true straight
// line, grains that need several light quanta each, and one S summed from sensitivities that a
// normal distribution spreads (drawn on the sensitometry bench only). Foreign scans have four
// others (foreign_curves.h). Whatever the family, a curve is stretched along log exposure until its
// contrast index is the one asked for, and shifted until it reaches net density 0.10 at the speed
// point asked for.
#pragma once

#include <string>
#include <vector>

namespace filmsim {

enum class CurveFamily {
  kSoftToe,
  kLogistic,
  kStraightLine,
  kQuantumCount,
  kNormalSum,
  // Foreign ones (foreign_curves.h).
  kTwoLayers,
  kSweptToe,
  kShortToe,
  kWavyLine
};

std::string curve_family_name(CurveFamily family);

struct CurveSettings {
  CurveFamily family = CurveFamily::kSoftToe;
  double contrast_index = 0.58;     ///< by the two-arc construction, 0.2 to 1.2
  double maximum_density = 2.6;     ///< net, reached at unlimited exposure; 1.2 to 4
  double toe = 0.15;                ///< density over which the toe bends; soft toe, straight line
  double shoulder = 4.0;            ///< sharpness of the shoulder (soft toe), 2 to 8
  double speed_point_log_h = -2.0;  ///< log10 lux second where net density is 0.10
};

class FilmCurve {
 public:
  explicit FilmCurve(const CurveSettings& settings);

  /// Net density at log10 exposure; rises from 0 to the maximum density.
  [[nodiscard]] double density(double log_h) const;
  /// The exposure that gives a net density strictly between 0 and the maximum.
  [[nodiscard]] double log_h_of(double net_density) const;
  /// The same curve by table, for pixels; error below 0.001.
  [[nodiscard]] float quick_density(float log_h) const;
  [[nodiscard]] const CurveSettings& settings() const { return settings_; }

 private:
  CurveSettings settings_;
  double stretch_ = 1.0;
  double shift_ = 0.0;
  std::vector<float> table_;
};

/// Contrast index of any rising curve (Niederpruem, Nelson, Yule 1966): a centre slides along the
/// zero line until it and the curve's crossings of circles of radius 0.2 and 2.2 about it lie on
/// one straight line; the index is that line's slope.
struct TwoArcs {
  double contrast_index = 0.0;
  double centre_log_h = 0.0;
};

template <typename Curve>
TwoArcs two_arc_contrast(const Curve& net_density, double low_log_h, double high_log_h);

/// Slope from net density 0.10 to the point 1.50 further right.
template <typename Curve>
double average_gradient(const Curve& net_density, double speed_point_log_h) {
  constexpr double kRange = 1.50;
  return (net_density(speed_point_log_h + kRange) - net_density(speed_point_log_h)) / kRange;
}

}  // namespace filmsim

#include "simulator/two_arcs.h"
