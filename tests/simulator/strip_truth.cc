#include "simulator/strip_exposure.h"
#include "simulator/tell_truth.h"

#include <cmath>

namespace filmsim {
namespace {

ChannelDensities base_fog(const FilmStock& stock) {
  const Rgb clear = clear_density(stock);
  return {visual_density(stock, 0.0), clear[0], clear[1], clear[2]};
}

Box visible_box(const FilmPlanes& planes, std::size_t strip) {
  int x0 = planes.net.width;
  int y0 = planes.net.height;
  int x1 = 0;
  int y1 = 0;
  for (int y = 0; y < planes.net.height; ++y) {
    for (int x = 0; x < planes.net.width; ++x) {
      const std::size_t i = planes.net.index(x, y);
      if (planes.strip[i] != strip + 1 || planes.open.values[i] < 0.5F) continue;
      x0 = std::min(x0, x);
      y0 = std::min(y0, y);
      x1 = std::max(x1, x + 1);
      y1 = std::max(y1, y + 1);
    }
  }
  if (x1 <= x0) return {};
  return {static_cast<double>(x0), static_cast<double>(y0), static_cast<double>(x1 - x0),
          static_cast<double>(y1 - y0)};
}

// Share of a hole's border that shows, from points around it.
double hole_shows(Point middle, const FilmPlanes& planes, const CameraGeometry& camera,
                  const StripGeometry& geometry) {
  int seen = 0;
  int points = 0;
  for (const double du : {-0.5, -0.25, 0.0, 0.25, 0.5}) {
    for (const double dv : {-0.5, -0.25, 0.0, 0.25, 0.5}) {
      const Point film_mm{middle.x + du * k135HoleAlongMm, middle.y + dv * k135HoleAcrossMm};
      ++points;
      if (film_mm.x < 0.0 || film_mm.x > geometry.length_mm()) continue;
      const Point px = camera.px_from_mm(geometry.glass_from_film(film_mm));
      const int x = static_cast<int>(std::floor(px.x));
      const int y = static_cast<int>(std::floor(px.y));
      if (x < 0 || y < 0 || x >= planes.net.width || y >= planes.net.height) continue;
      const std::size_t i = planes.net.index(x, y);
      if (planes.open.values[i] > 0.5F && geometry.outline_distance(film_mm) < 0.0) ++seen;
    }
  }
  return static_cast<double>(seen) / points;
}

bool shows(const FilmPlanes& planes, std::size_t strip, unsigned char what) {
  constexpr int kEnough = 20;
  int count = 0;
  for (std::size_t i = 0; i < planes.what.size() && count < kEnough; ++i) {
    if (planes.strip[i] == strip + 1 && planes.open.values[i] >= 1.0F && planes.what[i] == what) {
      ++count;
    }
  }
  return count >= kEnough;
}

}  // namespace

StripTruth strip_truth(const Scenario& scenario, std::size_t strip, const FilmPlanes& planes,
                       const CameraGeometry& camera, const StripGeometry& geometry) {
  const StripPlan& plan = scenario.strips[strip];
  StripTruth truth;
  truth.number = static_cast<int>(strip) + 1;
  truth.box_px = visible_box(planes, strip);
  for (const Point middle : geometry.hole_middles()) {
    const double share = hole_shows(middle, planes, camera, geometry);
    if (share >= 1.0) {
      truth.holes_px.push_back(camera.px_from_mm(geometry.glass_from_film(middle)));
    } else if (share > 0.0) {
      ++truth.holes_partly;
    }
  }
  truth.base_fog = base_fog(plan.stock);
  const FilmCurve curve(plan.stock.curve);
  const double speed = plan.stock.curve.speed_point_log_h;
  const auto net = [&](double log_h) { return curve.density(log_h); };
  truth.contrast_index = two_arc_contrast(net, speed - 3.0, speed + 1.0).contrast_index;
  truth.average_gradient = average_gradient(net, speed);
  if (shows(planes, strip, kInPrint)) {
    truth.edge_print = visual_density(plan.stock, net(speed + plan.stock.edge_print_log_h));
  }
  if (shows(planes, strip, kInLeader)) truth.leader = visual_density(plan.stock, net(speed + 3.5));
  return truth;
}

}  // namespace filmsim
