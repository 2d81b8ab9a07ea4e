// Even film with drawn marks and grain, as a scan that marks can be looked for in.
#pragma once

#include "base/seeded_noise.h"
#include "marks/find_marks.h"
#include "tables/shipped_knowledge.h"

#include <algorithm>
#include <cmath>
#include <cstdint>
#include <functional>

namespace fogline {

/// How much of a disc's pixel lies inside, its edge one pixel soft.
inline double disc_share(double distance_px, double radius_px) {
  return std::clamp(0.5 + radius_px - distance_px, 0.0, 1.0);
}

class DrawnDensity {
 public:
  DrawnDensity(double length_mm, double width_mm, double pixels_per_mm, double density)
      : pixels_per_mm_(pixels_per_mm),
        density_(static_cast<int>(length_mm * pixels_per_mm),
                 static_cast<int>(width_mm * pixels_per_mm), 1, static_cast<float>(density)) {
    film.format = FilmFormat::unknown;
    film.map = FilmMap::straight({0.0, 0.5 * density_.height()}, 0.0, pixels_per_mm);
    film.along_end_mm = length_mm;
    film.across_begin_mm = -0.5 * width_mm;
    film.across_end_mm = 0.5 * width_mm;
  }

  /// Changes each pixel of an area: `change` gets its place on the film and its density, and gives
  /// the new one.
  void draw_in(const FilmExtent& area, const std::function<double(PointMm, double)>& change) {
    const PointPx begin = film.map.scan_from_film({area.along_begin_mm, area.across_begin_mm});
    const PointPx end = film.map.scan_from_film({area.along_end_mm, area.across_end_mm});
    const auto within = [](double px, int size) {
      return std::clamp(static_cast<int>(px), 0, size);
    };
    for (int y = within(begin.y, density_.height()); y < within(end.y + 1.0, density_.height());
         ++y) {
      for (int x = within(begin.x, density_.width()); x < within(end.x + 1.0, density_.width());
           ++x) {
        const PointMm at = film.map.film_from_scan({x + 0.5, y + 0.5});
        density_.at(x, y) = static_cast<float>(change(at, static_cast<double>(density_.at(x, y))));
      }
    }
  }

  void draw(const std::function<double(PointMm, double)>& change) {
    draw_in({film.along_begin_mm, film.along_end_mm, film.across_begin_mm, film.across_end_mm},
            change);
  }

  /// A disc whose density is changed by so much.
  void draw_disc(PointMm middle, double diameter_mm, double contrast) {
    const double reach = 0.5 * diameter_mm + 1.0 / pixels_per_mm_;
    const FilmExtent area{middle.along_mm - reach, middle.along_mm + reach,
                          middle.across_mm - reach, middle.across_mm + reach};
    draw_in(area, [&](PointMm at, double density) {
      const double distance =
          std::hypot(at.along_mm - middle.along_mm, at.across_mm - middle.across_mm);
      return density +
             contrast * disc_share(distance * pixels_per_mm_, 0.5 * diameter_mm * pixels_per_mm_);
    });
  }

  void add_grain(double sd, std::uint32_t seed) {
    SeededNoise noise(seed);
    for (float& density : density_.samples()) {
      density += static_cast<float>(noise.normal(sd));
    }
  }

  [[nodiscard]] MarkSearch search(double clear_density) const {
    ScanGrid grid;
    grid.light = LightRaster(density_.width(), density_.height(), 1);
    grid.clipped = Raster<std::uint8_t>(density_.width(), density_.height());
    constexpr double lamp_light = 0.9;
    for (int y = 0; y < density_.height(); ++y) {
      for (int x = 0; x < density_.width(); ++x) {
        const double density = static_cast<double>(density_.at(x, y));
        grid.light.set_light(x, y, 0,
                             static_cast<float>(lamp_light * transmittance_from_density(density)));
      }
    }
    LightSample sample;
    sample.light = {lamp_light};
    const StrayLight stray = StrayLight::estimated(grid, {film}, pixels_per_mm_);
    return find_marks(
        film, 1,
        {grid, stray, Lamp::fitted({sample}, 1), clear_density, shipped_knowledge().scan.marks});
  }

  FilmStrip film;

 private:
  double pixels_per_mm_;
  Raster<float> density_;
};

}  // namespace fogline
