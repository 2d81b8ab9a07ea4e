#include "simulator/film_curve.h"

#include "simulator/foreign_curves.h"

#include <algorithm>
#include <cmath>
#include <numbers>

namespace filmsim {
namespace {

constexpr double kTableLow = -5.0;  // log H from the speed point where the table begins
constexpr double kTableHigh = 5.0;
constexpr int kTableSteps = 4000;

// Each family as a function of z, an exposure in units of density: the steepest slope is about 1.

double soft_toe(double z, const CurveSettings& s) {
  const double line = z > 40.0 * s.toe ? z : s.toe * std::log1p(std::exp(z / s.toe));
  return line / std::pow(1.0 + std::pow(line / s.maximum_density, s.shoulder), 1.0 / s.shoulder);
}

double logistic(double z, const CurveSettings& s) {
  return s.maximum_density / (1.0 + std::exp(-4.0 * z / s.maximum_density));
}

// Parabolas that touch the straight line and the two levels.
double straight_line(double z, const CurveSettings& s) {
  const double toe = s.toe;
  const double top = 0.25 * s.maximum_density;
  if (z <= -toe) return 0.0;
  if (z < toe) return (z + toe) * (z + toe) / (4.0 * toe);
  if (z < s.maximum_density - top) return z;
  if (z >= s.maximum_density + top) return s.maximum_density;
  const double left = s.maximum_density + top - z;
  return s.maximum_density - left * left / (4.0 * top);
}

// Share of grains that caught at least `kQuanta` quanta (Silberstein's idea), over sizes spread
// evenly in log sensitivity.
double quantum_count(double z, const CurveSettings& s) {
  constexpr int kSizes = 9;
  constexpr double kSpread = 1.6;  // log10 of largest over smallest sensitivity
  double share = 0.0;
  for (int i = 0; i < kSizes; ++i) {
    const double log_quanta =
        1.0 + z / s.maximum_density * 2.2 - kSpread * (static_cast<double>(i) / (kSizes - 1));
    const double mean = std::pow(10.0, std::min(log_quanta, 3.0));
    // Poisson, at least four.
    share += 1.0 - std::exp(-mean) * (1.0 + mean * (1.0 + mean / 2.0 * (1.0 + mean / 3.0)));
  }
  return s.maximum_density * share / kSizes;
}

// Steepest, slope 1, halfway up.
double normal_sum(double z, const CurveSettings& s) {
  const double standard = z * std::sqrt(2.0 * std::numbers::pi) / s.maximum_density;
  return 0.5 * s.maximum_density * std::erfc(-standard / std::numbers::sqrt2);
}

double shape(double z, const CurveSettings& s) {
  switch (s.family) {
    case CurveFamily::kSoftToe:
      return soft_toe(z, s);
    case CurveFamily::kLogistic:
      return logistic(z, s);
    case CurveFamily::kStraightLine:
      return straight_line(z, s);
    case CurveFamily::kQuantumCount:
      return quantum_count(z, s);
    case CurveFamily::kNormalSum:
      return normal_sum(z, s);
    case CurveFamily::kTwoLayers:
      return two_layers(z, s.maximum_density);
    case CurveFamily::kSweptToe:
      return swept_toe(z, s.maximum_density);
    case CurveFamily::kShortToe:
      return short_toe(z, s.maximum_density);
    case CurveFamily::kWavyLine:
      return wavy_line(z, s.maximum_density);
  }
  return 0.0;
}

double shape_inverse(double density, const CurveSettings& s) {
  double low = -30.0;
  double high = 30.0;
  for (int i = 0; i < 80; ++i) {
    const double middle = 0.5 * (low + high);
    (shape(middle, s) < density ? low : high) = middle;
  }
  return 0.5 * (low + high);
}

constexpr double kSpeedPointDensity = 0.10;

}  // namespace

std::string curve_family_name(CurveFamily family) {
  switch (family) {
    case CurveFamily::kSoftToe:
      return "soft-toe";
    case CurveFamily::kLogistic:
      return "logistic";
    case CurveFamily::kStraightLine:
      return "straight-line";
    case CurveFamily::kQuantumCount:
      return "quantum-count";
    case CurveFamily::kNormalSum:
      return "normal-sum";
    case CurveFamily::kTwoLayers:
      return "two-layers";
    case CurveFamily::kSweptToe:
      return "swept-toe";
    case CurveFamily::kShortToe:
      return "short-toe";
    case CurveFamily::kWavyLine:
      return "wavy-line";
  }
  return "unknown";
}

FilmCurve::FilmCurve(const CurveSettings& settings) : settings_(settings) {
  const double z_speed = shape_inverse(kSpeedPointDensity, settings);
  double low = 0.02;
  double high = 20.0;
  for (int i = 0; i < 30; ++i) {
    const double stretch = std::sqrt(low * high);
    const auto curve = [&](double x) { return shape(z_speed + stretch * x, settings); };
    const double index = two_arc_contrast(curve, -3.0, 1.0).contrast_index;
    (index < settings.contrast_index ? low : high) = stretch;
  }
  stretch_ = std::sqrt(low * high);
  shift_ = settings.speed_point_log_h - z_speed / stretch_;
  table_.resize(kTableSteps + 1);
  for (int i = 0; i <= kTableSteps; ++i) {
    const double x = kTableLow + (kTableHigh - kTableLow) * i / kTableSteps;
    table_[static_cast<std::size_t>(i)] =
        static_cast<float>(density(settings.speed_point_log_h + x));
  }
}

double FilmCurve::density(double log_h) const {
  return shape(stretch_ * (log_h - shift_), settings_);
}

double FilmCurve::log_h_of(double net_density) const {
  return shift_ + shape_inverse(net_density, settings_) / stretch_;
}

float FilmCurve::quick_density(float log_h) const {
  constexpr auto kScale = static_cast<float>(kTableSteps / (kTableHigh - kTableLow));
  const float position = std::clamp(
      (log_h - static_cast<float>(settings_.speed_point_log_h) - static_cast<float>(kTableLow)) *
          kScale,
      0.0F, static_cast<float>(kTableSteps) - 0.001F);
  const auto i = static_cast<std::size_t>(position);
  const float t = position - static_cast<float>(i);
  return table_[i] + t * (table_[i + 1] - table_[i]);
}

}  // namespace filmsim
