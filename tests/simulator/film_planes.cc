#include "simulator/film_planes.h"

#include "simulator/filters.h"
#include "simulator/fractal_field.h"
#include "simulator/strip_exposure.h"
#include "simulator/surge.h"

#include <cmath>

namespace filmsim {
namespace {

struct Region {
  int x0, y0, x1, y1;  // pixels, ends one past
};

// A box of pixels, held inside the picture.
Region limited_region(Point low, Point high, int width, int height) {
  constexpr double kMarginPx = 3.0;
  const auto inside = [](double value, int limit) {
    return std::clamp(static_cast<int>(std::lround(value)), 0, limit);
  };
  return {inside(low.x - kMarginPx, width), inside(low.y - kMarginPx, height),
          inside(high.x + kMarginPx, width), inside(high.y + kMarginPx, height)};
}

void widen(Point& low, Point& high, Point p) {
  low = {std::min(low.x, p.x), std::min(low.y, p.y)};
  high = {std::max(high.x, p.x), std::max(high.y, p.y)};
}

// Pixels that a strip can touch: the box of its outline, mapped at many points since the map bends.
Region strip_region(const StripGeometry& strip, const CameraGeometry& camera, int width,
                    int height) {
  constexpr int kPoints = 16;
  Point low{1e9, 1e9};
  Point high{-1e9, -1e9};
  for (int i = 0; i <= kPoints; ++i) {
    for (const double v : {0.0, strip.width_mm()}) {
      widen(low, high,
            camera.px_from_mm(strip.glass_from_film({strip.length_mm() * i / kPoints, v})));
    }
  }
  return limited_region(low, high, width, height);
}

// Pixels that a window of the holder can touch.
Region window_region(const HolderWindow& window, const CameraGeometry& camera, int width,
                     int height) {
  Point low{1e9, 1e9};
  Point high{-1e9, -1e9};
  for (const double x : {-0.5, 0.0, 0.5}) {
    for (const double y : {-0.5, 0.0, 0.5}) {
      // A little further out: between these points the sides may bend.
      widen(low, high,
            camera.px_from_mm({window.middle_mm.x + 1.02 * x * window.width_mm,
                               window.middle_mm.y + 1.02 * y * window.height_mm}));
    }
  }
  return limited_region(low, high, width, height);
}

struct Span {
  double from_mm, to_mm;
};

// Part of the strip's length that the picture shows, from points around the region's border.
Span seen_length(const Region& region, const StripGeometry& strip, const CameraGeometry& camera) {
  constexpr int kPoints = 8;
  Span seen{1e9, -1e9};
  for (int i = 0; i <= kPoints; ++i) {
    for (int j = 0; j <= kPoints; ++j) {
      const Point px{region.x0 + (region.x1 - region.x0) * i / static_cast<double>(kPoints),
                     region.y0 + (region.y1 - region.y0) * j / static_cast<double>(kPoints)};
      const double u = strip.film_from_glass(camera.mm_from_px(px)).x;
      seen = {std::min(seen.from_mm, u), std::max(seen.to_mm, u)};
    }
  }
  return seen;
}

class StripLayer {
 public:
  StripLayer(const StripPlan& plan, const StripGeometry& geometry, double pixels_per_mm, Span seen)
      : plan_(plan),
        geometry_(geometry),
        pixels_per_mm_(pixels_per_mm),
        curve_(plan.stock.curve),
        exposure_(plan, pixels_per_mm, seen.from_mm, seen.to_mm),
        speed_point_(static_cast<float>(plan.stock.curve.speed_point_log_h)) {}

  void lay(FilmPlanes& planes, std::size_t i, Point film_mm, unsigned char number) const {
    const double outline = geometry_.outline_distance(film_mm) * pixels_per_mm_;
    if (outline > 0.5) return;
    const double hole_px = geometry_.hole_distance(film_mm) * pixels_per_mm_;
    const float hole = covered_share(hole_px);
    planes.film.values[i] = covered_share(outline) * (1.0F - hole);
    planes.strip[i] = number;
    if (hole >= 1.0F) return;
    if (plan_.edge_shade > 0.0) planes.added.values[i] += edge_shade(outline, hole_px);
    const StripExposure::Light light = exposure_.at(film_mm);
    planes.what[i] = light.what;
    if (light.exposure <= 0.0F) return;
    const float net = curve_.quick_density(std::log10(light.exposure) + speed_point_);
    planes.net.values[i] = net + surge_at(plan_, geometry_, film_mm, net);
  }

 private:
  // Light that meets a cut edge is bent away. A line thinner than a pixel counts by its share.
  [[nodiscard]] float edge_shade(double outline_px, double hole_px) const {
    constexpr double kShadeMm = 0.05;
    const double nearest = std::min(-outline_px, hole_px);
    const double width_px = std::max(1.0, kShadeMm * pixels_per_mm_);
    const double share = std::clamp(1.0 - std::max(nearest, 0.0) / width_px, 0.0, 1.0);
    return static_cast<float>(plan_.edge_shade * share * kShadeMm * pixels_per_mm_ / width_px);
  }

  const StripPlan& plan_;
  const StripGeometry& geometry_;
  double pixels_per_mm_;
  FilmCurve curve_;
  StripExposure exposure_;
  float speed_point_;
};

// Calls `change(value, share of the pixel inside the outline)` wherever the outline may reach.
template <typename Change>
void change_inside(Plane& open, const HolderWindow& outline, const CameraGeometry& camera,
                   const Change& change) {
  const double scale = camera.pixels_per_mm();
  const Region region = window_region(outline, camera, open.width, open.height);
  for (int y = region.y0; y < region.y1; ++y) {
    for (int x = region.x0; x < region.x1; ++x) {
      const Point mm = camera.mm_from_px({x + 0.5, y + 0.5});
      const double distance = rounded_box_distance(
          mm.x - outline.middle_mm.x, mm.y - outline.middle_mm.y, 0.5 * outline.width_mm,
          0.5 * outline.height_mm, outline.corner_radius_mm);
      change(open.at(x, y), covered_share(distance * scale));
    }
  }
}

void open_windows(Plane& open, const Holder& holder, const CameraGeometry& camera) {
  if (!holder.present) {
    std::fill(open.values.begin(), open.values.end(), 1.0F);
    return;
  }
  for (const HolderWindow& window : holder.windows) {
    change_inside(open, window, camera,
                  [](float& value, float share) { value = std::max(value, share); });
  }
  for (const HolderBar& bar : holder.bars) {
    const auto stopped = static_cast<float>(1.0 - bar.passes);
    change_inside(open, bar.outline, camera,
                  [&](float& value, float share) { value *= 1.0F - stopped * share; });
  }
}

bool has_haze(const Scenario& scenario) {
  for (const StripPlan& strip : scenario.strips) {
    for (const double density : strip.stock.haze) {
      if (density > 0.0) return true;
    }
  }
  return false;
}

void make_haze(FilmPlanes& planes, const Scenario& scenario) {
  constexpr double kPatchMm = 8.0;
  constexpr float kUnevenness = 0.25F;  // sd of the veil as a share of its mean
  if (!has_haze(scenario)) return;
  Random random(scenario.seed, 11);
  planes.haze = fractal_field(planes.net.width, planes.net.height,
                              kPatchMm * scenario.pixels_per_mm, 0.5, random);
  for (float& value : planes.haze.values) value = std::max(0.0F, 1.0F + kUnevenness * value);
}

}  // namespace

FilmPlanes lay_film(const Scenario& scenario, const CameraGeometry& camera,
                    const std::vector<StripGeometry>& geometries) {
  FilmPlanes planes;
  const int w = scenario.width_px;
  const int h = scenario.height_px;
  planes.net = planes.film = planes.open = planes.added = Plane(w, h);
  planes.strip.assign(planes.net.values.size(), 0);
  planes.what.assign(planes.net.values.size(), kUnexposed);
  open_windows(planes.open, scenario.holder, camera);
  for (std::size_t s = 0; s < scenario.strips.size(); ++s) {
    const Region region = strip_region(geometries[s], camera, w, h);
    const StripLayer layer(scenario.strips[s], geometries[s], scenario.pixels_per_mm,
                           seen_length(region, geometries[s], camera));
    for (int y = region.y0; y < region.y1; ++y) {
      for (int x = region.x0; x < region.x1; ++x) {
        const Point film_mm = geometries[s].film_from_glass(camera.mm_from_px({x + 0.5, y + 0.5}));
        layer.lay(planes, planes.net.index(x, y), film_mm, static_cast<unsigned char>(s + 1));
      }
    }
  }
  make_haze(planes, scenario);
  planes.clean_net = planes.net;
  return planes;
}

double diffuse_density(const FilmPlanes& planes, const FilmStock& stock, std::size_t pixel,
                       std::size_t channel) {
  const double net = planes.clean_net.values[pixel];
  double density = stock.base[channel] + stock.fog + stock.dye_left[channel] +
                   stock.yellow_stain[channel] + net * (1.0 + stock.image_stain[channel]);
  if (!planes.haze.values.empty()) density += stock.haze[channel] * planes.haze.values[pixel];
  return density;
}

}  // namespace filmsim
