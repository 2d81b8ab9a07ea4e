// A strip of film given in density, for reading it: rectangles of known density, fine noise.
#pragma once

#include "base/seeded_noise.h"
#include "density/density_strip.h"
#include "film/film_layout.h"

namespace fogline::drawn {

constexpr double base_density = 0.27;

/// 135 film of 114 mm, whole, with two perforations a pitch.
inline FilmStrip perforated_film() {
  FilmStrip film;
  film.format = FilmFormat::f135;
  film.map = FilmMap::straight({0.0, 0.0}, 0.0, 10.0);
  film.along_end_mm = 114.0;
  film.across_begin_mm = -film_135::width_mm / 2.0;
  film.across_end_mm = film_135::width_mm / 2.0;
  for (const int row : {-1, 1}) {
    for (int k = 0; k < 24; ++k) {
      Perforation hole;
      hole.row = row;
      hole.film = {2.0 + k * film_135::pitch_mm, row * film_135::row_across_mm};
      film.perforations.push_back(hole);
    }
  }
  return film;
}

/// Base plus fog over the whole strip, a little brighter in red and a little denser in blue.
inline DensityStrip clear_density(const FilmStrip& film, double noise_density = 0.004) {
  constexpr float red = -0.02F;
  constexpr float blue = 0.03F;
  DensityStrip density;
  density.extent = {film.along_begin_mm, film.along_end_mm, film.across_begin_mm,
                    film.across_end_mm};
  const int width = static_cast<int>((film.along_end_mm - film.along_begin_mm) * 10.0);
  const int height = static_cast<int>((film.across_end_mm - film.across_begin_mm) * 10.0);
  density.visual = Raster<float>(width, height);
  density.channels = Raster<float>(width, height, 3);
  SeededNoise noise(17);
  for (int y = 0; y < height; ++y) {
    for (int x = 0; x < width; ++x) {
      const auto value = static_cast<float>(base_density + noise.normal(noise_density));
      density.visual.at(x, y) = value;
      density.channels.at(x, y, 0) = value + red;
      density.channels.at(x, y, 1) = value;
      density.channels.at(x, y, 2) = value + blue;
    }
  }
  return density;
}

/// Adds density to a rectangle, on its border by the share of each spot that it covers.
inline void add_density(DensityStrip& density, const FilmExtent& area, double net) {
  const double half = 0.5 / density.pixels_per_mm;
  const auto covered = [&](double at, double begin, double end) {
    const double low = std::max(at - half, begin);
    const double high = std::min(at + half, end);
    return std::max(0.0, high - low) / (2.0 * half);
  };
  for (int y = density.row(area.across_begin_mm); y <= density.row(area.across_end_mm); ++y) {
    for (int x = density.column(area.along_begin_mm); x <= density.column(area.along_end_mm); ++x) {
      const double share = covered(density.along_mm(x), area.along_begin_mm, area.along_end_mm) *
                           covered(density.across_mm(y), area.across_begin_mm, area.across_end_mm);
      density.visual.at(x, y) += static_cast<float>(share * net);
      for (int c = 0; c < density.channels.channels(); ++c) {
        density.channels.at(x, y, c) += static_cast<float>(share * net);
      }
    }
  }
}

}  // namespace fogline::drawn
