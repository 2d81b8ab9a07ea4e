// Even film with drawn marks and grain, as a scan that marks can be looked for in.
#pragma once

#include "base/seeded_noise.h"
#include "marks/find_marks.h"
#include "marks/mark_tile.h"
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

/// Drawn film as a scan shows it, with what is known of the scan before marks are looked for.
struct DensityScan {
  ScanGrid grid;
  StrayLight stray;
  Lamp lamp;

  [[nodiscard]] MarkContext context(double clear_density) const {
    return {grid, stray, lamp, clear_density, shipped_knowledge().scan.marks};
  }
};

/// Even film, laid straight from left to right; the middle line of the film is the image's.
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
    const PointPx one = film.map.scan_from_film({area.along_begin_mm, area.across_begin_mm});
    const PointPx other = film.map.scan_from_film({area.along_end_mm, area.across_end_mm});
    // A turned film's first corner isn't the upper left one.
    const PointPx begin{std::min(one.x, other.x), std::min(one.y, other.y)};
    const PointPx end{std::max(one.x, other.x), std::max(one.y, other.y)};
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

  /// The scan turned clockwise by a quarter: marks keep their places on the film.
  [[nodiscard]] DrawnDensity turned() const {
    DrawnDensity turned = *this;
    turned.density_ = Raster<float>(density_.height(), density_.width());
    for (int y = 0; y < density_.height(); ++y) {
      for (int x = 0; x < density_.width(); ++x) {
        turned.density_.at(density_.height() - 1 - y, x) = density_.at(x, y);
      }
    }
    const PointPx origin = film.map.scan_from_film({0.0, 0.0});
    turned.film.map = FilmMap::straight({density_.height() - origin.y, origin.x},
                                        film.map.direction_deg() + 90.0, pixels_per_mm_);
    return turned;
  }

  /// The film seen from its other side: what lay above the middle line lies below it. For film
  /// that isn't turned and has no frames or holes.
  [[nodiscard]] DrawnDensity mirrored() const {
    DrawnDensity mirrored = *this;
    for (int y = 0; y < density_.height(); ++y) {
      std::copy_n(density_.row(y), density_.width(),
                  mirrored.density_.row(density_.height() - 1 - y));
    }
    return mirrored;
  }

  /// The whole film as a tile, without the way through a scan; all of it may be searched. For film
  /// that isn't turned.
  [[nodiscard]] MarkTile tile(double clear_density) const {
    MarkTile tile;
    const double half_width_mm = 0.5 * density_.height() / pixels_per_mm_;
    tile.extent = {0.0, density_.width() / pixels_per_mm_, -half_width_mm, half_width_mm};
    tile.pixels_per_mm = pixels_per_mm_;
    tile.clear_density = clear_density;
    tile.density = cv::Mat1f(density_.height(), density_.width());
    std::copy(density_.samples().begin(), density_.samples().end(), tile.density.begin());
    tile.usable = cv::Mat1b(tile.density.size(), static_cast<unsigned char>(255));
    return tile;
  }

  [[nodiscard]] DensityScan scan() const {
    constexpr double lamp_light = 0.9;
    DensityScan scan;
    scan.grid.light = LightRaster(density_.width(), density_.height(), 1);
    scan.grid.clipped = Raster<std::uint8_t>(density_.width(), density_.height());
    for (int y = 0; y < density_.height(); ++y) {
      for (int x = 0; x < density_.width(); ++x) {
        const double light = lamp_light * std::pow(10.0, -static_cast<double>(density_.at(x, y)));
        scan.grid.light.set_light(x, y, 0, static_cast<float>(light));
      }
    }
    LightSample sample;
    sample.light = {lamp_light};
    scan.stray = StrayLight::estimated(scan.grid, {film}, pixels_per_mm_);
    scan.lamp = Lamp::fitted({sample}, 1);
    return scan;
  }

  [[nodiscard]] MarkSearch search(double clear_density) const {
    const DensityScan seen = scan();
    return find_marks(film, 1, seen.context(clear_density));
  }

  FilmStrip film;

 private:
  double pixels_per_mm_;
  Raster<float> density_;
};

}  // namespace fogline
