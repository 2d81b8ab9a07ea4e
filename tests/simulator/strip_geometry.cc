#include "simulator/strip_geometry.h"

#include <limits>
#include <numbers>

namespace filmsim {
namespace {

constexpr double kRowMiddleMm = k135HoleMarginMm + 0.5 * k135HoleAcrossMm;

// Sideways shift of a bent strip: a parabola, zero at both ends.
double bow_at(const StripGeometrySettings& s, double u) {
  const double t = u / s.length_mm;
  return 4.0 * s.bow_mm * t * (1.0 - t);
}

}  // namespace

double film_width_mm(FilmFormat format) {
  switch (format) {
    case FilmFormat::k135:
      return k135WidthMm;
    case FilmFormat::k120:
      return k120WidthMm;
    case FilmFormat::kSheet:
      return kSheetWidthMm;
    case FilmFormat::k127:
      return k127WidthMm;
    case FilmFormat::k110:
      return k110WidthMm;
  }
  return 0.0;
}

const char* film_format_name(FilmFormat format) {
  switch (format) {
    case FilmFormat::k135:
      return "135";
    case FilmFormat::k120:
      return "120";
    case FilmFormat::kSheet:
      return "sheet";
    case FilmFormat::k127:
      return "127";
    case FilmFormat::k110:
      return "110";
  }
  return "unknown";
}

StripGeometry::StripGeometry(const StripGeometrySettings& settings)
    : settings_(settings), width_mm_(film_width_mm(settings.format)) {
  const double quarter = settings.axis == FilmAxis::kY ? 90.0 : 0.0;
  const double angle = (settings.rotation_deg + quarter) * std::numbers::pi / 180.0;
  along_ = {std::cos(angle), std::sin(angle)};
}

Point StripGeometry::film_from_glass(Point mm) const {
  const double dx = mm.x - settings_.middle_mm.x;
  const double dy = mm.y - settings_.middle_mm.y;
  const double scale = 1.0 / (1.0 - settings_.shrinkage);
  const double u = (dx * along_.x + dy * along_.y) * scale + 0.5 * settings_.length_mm;
  const double v = (dy * along_.x - dx * along_.y) * scale + 0.5 * width_mm_;
  return {u, v - bow_at(settings_, u)};
}

Point StripGeometry::glass_from_film(Point film_mm) const {
  const double scale = 1.0 - settings_.shrinkage;
  const double u = (film_mm.x - 0.5 * settings_.length_mm) * scale;
  const double v = (film_mm.y + bow_at(settings_, film_mm.x) - 0.5 * width_mm_) * scale;
  return {settings_.middle_mm.x + u * along_.x - v * along_.y,
          settings_.middle_mm.y + u * along_.y + v * along_.x};
}

double StripGeometry::outline_distance(Point film_mm) const {
  double distance =
      rounded_box_distance(film_mm.x - 0.5 * settings_.length_mm, film_mm.y - 0.5 * width_mm_,
                           0.5 * settings_.length_mm, 0.5 * width_mm_, 0.0);
  if (settings_.tongue_mm > 0.0) {
    // The tongue keeps the upper 22 mm; below it a piece with a rounded inner corner is gone.
    constexpr double kTongueWidthMm = 22.0;
    const double removed = rounded_box_distance(film_mm.x, film_mm.y - kTongueWidthMm - 20.0,
                                                settings_.tongue_mm, 20.0, 4.0);
    distance = std::max(distance, -removed);
  }
  if (settings_.notch) {
    // Two round bites in the edge near the end: felt in the dark, invented code.
    for (const double from_end_mm : {12.0, 17.5}) {
      const double bite =
          std::hypot(film_mm.x - (settings_.length_mm - from_end_mm), film_mm.y) - 1.5;
      distance = std::max(distance, -bite);
    }
  }
  return distance;
}

double StripGeometry::hole_distance(Point film_mm) const {
  if (settings_.format != FilmFormat::k135) return std::numeric_limits<double>::max();
  const double steps = std::round((film_mm.x - settings_.hole_phase_mm) / k135PitchMm);
  const double du = film_mm.x - settings_.hole_phase_mm - steps * k135PitchMm;
  const double from_middle = std::abs(film_mm.y - 0.5 * width_mm_);
  const double dv = from_middle - (0.5 * width_mm_ - kRowMiddleMm);
  return rounded_box_distance(du, dv, 0.5 * k135HoleAlongMm, 0.5 * k135HoleAcrossMm,
                              k135HoleCornerMm);
}

std::vector<Point> StripGeometry::hole_middles() const {
  std::vector<Point> middles;
  if (settings_.format != FilmFormat::k135) return middles;
  const double first = std::ceil(-settings_.hole_phase_mm / k135PitchMm);
  for (const double v : {kRowMiddleMm, width_mm_ - kRowMiddleMm}) {
    for (double u = settings_.hole_phase_mm + first * k135PitchMm; u < settings_.length_mm;
         u += k135PitchMm) {
      middles.push_back({u, v});
    }
  }
  return middles;
}

}  // namespace filmsim
