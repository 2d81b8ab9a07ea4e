#include "film/film_map.h"

#include "numerics/least_squares.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <numbers>

namespace fogline {

namespace {

constexpr double along_unit_mm = 100.0;
/// Residual below which a point is never called wrong, in stored pixels.
constexpr double residual_floor_px = 0.3;
/// Degrees along the film need this many points a row: a cubic through fewer would follow errors.
constexpr int points_for_quadratic = 6;
constexpr int points_for_cubic = 12;
/// Newton steps of the inverse; the map is nearly linear, three give rounding error.
constexpr int inverse_steps = 6;

using Terms = std::array<double, 7>;

Terms terms_at(double along_mm, double across_mm) {
  const double s = along_mm / along_unit_mm;
  const double t = across_mm;
  return {1.0, t, s, s * t, s * s, s * s * t, s * s * s};
}

Terms along_derivative(double along_mm, double across_mm) {
  const double s = along_mm / along_unit_mm;
  const double t = across_mm;
  return {0.0,
          0.0,
          1.0 / along_unit_mm,
          t / along_unit_mm,
          2.0 * s / along_unit_mm,
          2.0 * s * t / along_unit_mm,
          3.0 * s * s / along_unit_mm};
}

double dot(const Terms& terms, const std::vector<double>& coefficients) {
  double sum = 0.0;
  for (std::size_t i = 0; i < terms.size(); ++i) {
    sum += terms[i] * coefficients[i];
  }
  return sum;
}

/// Fits one coordinate; the basis is the given subset of terms, the rest stay 0.
std::vector<double> fit_coordinate(std::span<const MapPoint> points, const std::vector<int>& used,
                                   double PointPx::*coordinate) {
  LinearProblem problem;
  problem.coefficients = static_cast<int>(used.size());
  for (const MapPoint& point : points) {
    const Terms terms = terms_at(point.film.along_mm, point.film.across_mm);
    std::vector<double> row;
    for (const int index : used) {
      row.push_back(terms[static_cast<std::size_t>(index)]);
    }
    problem.add(row, point.scan.*coordinate);
  }
  const LinearFit fit = fit_robust(problem, residual_floor_px);
  std::vector<double> coefficients;
  if (fit.solved) {
    coefficients.assign(7, 0.0);
    for (std::size_t i = 0; i < used.size(); ++i) {
      coefficients[static_cast<std::size_t>(used[i])] = fit.coefficients[i];
    }
  }
  return coefficients;
}

}  // namespace

FilmMap FilmMap::straight(PointPx origin, double direction_deg, double pixels_per_mm) {
  const double angle = direction_deg * std::numbers::pi / 180.0;
  const double along_x = std::cos(angle) * pixels_per_mm;
  const double along_y = std::sin(angle) * pixels_per_mm;
  FilmMap map;
  map.x_ = {origin.x, -along_y, along_x * along_unit_mm, 0.0, 0.0, 0.0, 0.0};
  map.y_ = {origin.y, along_x, along_y * along_unit_mm, 0.0, 0.0, 0.0, 0.0};
  return map;
}

FilmMap FilmMap::fitted(std::span<const MapPoint> points) {
  FilmMap map;
  if (points.size() < 2) {
    return map;
  }
  const auto [first, last] = std::minmax_element(
      points.begin(), points.end(),
      [](const MapPoint& a, const MapPoint& b) { return a.film.along_mm < b.film.along_mm; });
  map.begin_mm_ = first->film.along_mm;
  map.end_mm_ = last->film.along_mm;
  const auto below = std::count_if(points.begin(), points.end(),
                                   [](const MapPoint& p) { return p.film.across_mm < 0.0; });
  const auto above = static_cast<std::ptrdiff_t>(points.size()) - below;
  const bool two_rows = below >= 2 && above >= 2;
  const auto longest = std::max(below, above);
  std::vector<int> used = two_rows ? std::vector<int>{0, 1, 2, 3} : std::vector<int>{0, 2};
  if (longest >= points_for_quadratic) {
    used.push_back(4);
    if (two_rows) {
      used.push_back(5);
    }
  }
  if (longest >= points_for_cubic) {
    used.push_back(6);
  }
  map.x_ = fit_coordinate(points, used, &PointPx::x);
  map.y_ = fit_coordinate(points, used, &PointPx::y);
  if (map.x_.empty() || map.y_.empty()) {
    return {};
  }
  if (!two_rows) {
    // One row fixes the film only along itself: put the across direction square to it, and move
    // the origin from the row to the middle line.
    const double row_mm = points.front().film.across_mm;
    const double slope_x = map.x_[2] / along_unit_mm;
    const double slope_y = map.y_[2] / along_unit_mm;
    map.x_[1] = -slope_y;
    map.y_[1] = slope_x;
    map.x_[3] = -2.0 * map.y_[4] / along_unit_mm;
    map.y_[3] = 2.0 * map.x_[4] / along_unit_mm;
    for (const auto& [constant, across] : {std::pair{0, 1}, std::pair{2, 3}}) {
      const auto c = static_cast<std::size_t>(constant);
      const auto a = static_cast<std::size_t>(across);
      map.x_[c] -= row_mm * map.x_[a];
      map.y_[c] -= row_mm * map.y_[a];
    }
  }
  return map;
}

PointPx FilmMap::scan_from_film(PointMm film) const {
  const bool bounded = end_mm_ > begin_mm_;
  const double inside = bounded ? std::clamp(film.along_mm, begin_mm_, end_mm_) : film.along_mm;
  const double beyond = film.along_mm - inside;
  const Terms terms = terms_at(inside, film.across_mm);
  PointPx point{dot(terms, x_), dot(terms, y_)};
  if (beyond != 0.0) {
    const Terms slope = along_derivative(inside, film.across_mm);
    point.x += beyond * dot(slope, x_);
    point.y += beyond * dot(slope, y_);
  }
  return point;
}

PointMm FilmMap::film_from_scan(PointPx scan) const {
  PointMm film{0.5 * (begin_mm_ + end_mm_), 0.0};
  for (int step = 0; step < inverse_steps; ++step) {
    constexpr double probe_mm = 0.5;
    const PointPx here = scan_from_film(film);
    const PointPx along = scan_from_film({film.along_mm + probe_mm, film.across_mm});
    const PointPx across = scan_from_film({film.along_mm, film.across_mm + probe_mm});
    const double ax = (along.x - here.x) / probe_mm;
    const double ay = (along.y - here.y) / probe_mm;
    const double bx = (across.x - here.x) / probe_mm;
    const double by = (across.y - here.y) / probe_mm;
    const double determinant = ax * by - ay * bx;
    if (determinant == 0.0) {
      break;
    }
    const double dx = scan.x - here.x;
    const double dy = scan.y - here.y;
    film.along_mm += (dx * by - dy * bx) / determinant;
    film.across_mm += (ax * dy - ay * dx) / determinant;
  }
  return film;
}

double FilmMap::pixels_per_mm() const {
  const double middle = 0.5 * (begin_mm_ + end_mm_);
  const Terms slope = along_derivative(middle, 0.0);
  return std::hypot(dot(slope, x_), dot(slope, y_));
}

double FilmMap::direction_deg() const {
  const double middle = 0.5 * (begin_mm_ + end_mm_);
  const Terms slope = along_derivative(middle, 0.0);
  return std::atan2(dot(slope, y_), dot(slope, x_)) * 180.0 / std::numbers::pi;
}

double FilmMap::rotation_deg() const {
  const double direction = direction_deg();
  return direction - 90.0 * std::round(direction / 90.0);
}

}  // namespace fogline
