#include "simulator/surge.h"

#include <cmath>

namespace filmsim {
namespace {

constexpr double kFadeMm = 4.0;         // streak falls to 1/e
constexpr double kHalfWidthMm = 0.9;    // sd along the film: nearly the hole's own width
constexpr float kSaturatingNet = 0.4F;  // net density at which the stated amount shows
constexpr double kInnerEdgeMm = k135HoleMarginMm + k135HoleAcrossMm;
constexpr double kClearlyThere = 0.01;

// Mean of the added density over points of the streak that the picture shows, and their box.
DrawnMark streak_of(Point hole, const FilmPlanes& planes, const StripPlan& plan,
                    const CameraGeometry& camera, const StripGeometry& geometry) {
  constexpr int kPoints = 12;
  DrawnMark mark;
  const double inwards = hole.y < 0.5 * geometry.width_mm() ? 1.0 : -1.0;
  Point low{1e9, 1e9};
  Point high{-1e9, -1e9};
  double sum = 0.0;
  int seen = 0;
  for (int i = 0; i <= kPoints; ++i) {
    for (int j = 0; j <= kPoints; ++j) {
      const Point film_mm{hole.x + kHalfWidthMm * (2.0 * i / kPoints - 1.0),
                          hole.y + inwards * (0.5 * k135HoleAcrossMm + kFadeMm * j / kPoints)};
      const Point px = camera.px_from_mm(geometry.glass_from_film(film_mm));
      const int x = static_cast<int>(std::floor(px.x));
      const int y = static_cast<int>(std::floor(px.y));
      if (x < 0 || y < 0 || x >= planes.net.width || y >= planes.net.height) continue;
      const std::size_t pixel = planes.net.index(x, y);
      if (planes.open.values[pixel] < 0.5F) continue;
      // The silver there holds the streak already; taking it out again would change little.
      sum += surge_at(plan, geometry, film_mm, std::max(0.0F, planes.clean_net.values[pixel]));
      ++seen;
      low = {std::min(low.x, px.x), std::min(low.y, px.y)};
      high = {std::max(high.x, px.x), std::max(high.y, px.y)};
    }
  }
  if (seen == 0) return mark;
  mark.plan.kind = MarkKind::kSurge;
  mark.plan.middle_mm = {hole.x, hole.y + inwards * 0.5 * (k135HoleAcrossMm + kFadeMm)};
  mark.plan.size_mm = kFadeMm;
  mark.plan.width_mm = 2.0 * kHalfWidthMm;
  mark.box_px = {low.x, low.y, high.x - low.x, high.y - low.y};
  mark.area_mm2 = 2.0 * kHalfWidthMm * kFadeMm * seen / ((kPoints + 1.0) * (kPoints + 1.0));
  mark.contrast_density = sum / seen;
  mark.visible = mark.contrast_density >= kClearlyThere;
  return mark;
}

}  // namespace

float surge_at(const StripPlan& plan, const StripGeometry& geometry, Point film_mm, float net) {
  if (plan.surge_density <= 0.0) return 0.0F;
  const double from_edge = std::min(film_mm.y, geometry.width_mm() - film_mm.y);
  const double phase = (film_mm.x - geometry.settings().hole_phase_mm) / k135PitchMm;
  const double beside = (phase - std::round(phase)) * k135PitchMm;
  const double across = std::exp(-std::abs(from_edge - kInnerEdgeMm) / kFadeMm);
  const double along = std::exp(-0.5 * std::pow(beside / kHalfWidthMm, 2.0));
  return static_cast<float>(plan.surge_density * across * along) * 2.0F * net /
         (net + kSaturatingNet);
}

std::vector<DrawnMark> visible_surge(const FilmPlanes& planes, const Scenario& scenario,
                                     const CameraGeometry& camera,
                                     const std::vector<StripGeometry>& geometries) {
  std::vector<DrawnMark> streaks;
  for (std::size_t s = 0; s < scenario.strips.size(); ++s) {
    if (scenario.strips[s].surge_density <= 0.0) continue;
    for (const Point hole : geometries[s].hole_middles()) {
      DrawnMark mark = streak_of(hole, planes, scenario.strips[s], camera, geometries[s]);
      mark.strip = static_cast<int>(s);
      if (mark.visible) streaks.push_back(mark);
    }
  }
  return streaks;
}

}  // namespace filmsim
