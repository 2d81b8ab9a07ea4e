#include "sensitometry/factory_exposures.h"

#include "numerics/robust.h"

#include <algorithm>
#include <cmath>
#include <vector>

namespace fogline {

namespace {

/// Outer rebate, |across| in mm: inside the film's edge by 0.4 mm, outside the holes by 0.3.
constexpr double outer_begin_mm = film_135::row_across_mm + film_135::hole_across_mm / 2.0 + 0.3;
constexpr double outer_end_mm = film_135::width_mm / 2.0 - 0.4;
/// Stands for "no light left" when medians are taken.
constexpr double darkest_density = 5.0;
/// Print is denser than base plus fog by this at least, and by this at most: what is darker is a
/// holder's edge, tape or fog.
constexpr double least_net = 0.15;
constexpr double greatest_net = 2.0;
/// Narrowest part of the outer rebate in which print is looked for, mm.
constexpr double least_band_mm = 0.8;
/// A core spot has print on all sides: strokes of 0.3 mm and more have one.
constexpr int core_reach_px = 1;
constexpr double least_core_mm2 = 0.5;
/// Fogged ends of leaders fade; this much is left out, mm.
constexpr double leader_margin_mm = 3.0;

bool is_core(const DensityStrip& density, int x, int y, double threshold) {
  for (int j = -core_reach_px; j <= core_reach_px; ++j) {
    for (int i = -core_reach_px; i <= core_reach_px; ++i) {
      if (!density.visual.contains(x + i, y + j) ||
          !(static_cast<double>(density.visual.at(x + i, y + j)) > threshold)) {
        return false;
      }
    }
  }
  return true;
}

bool in_leader(const FilmStrip& film, double along_mm) {
  return std::any_of(film.leaders.begin(), film.leaders.end(), [&](const FilmExtent& leader) {
    return along_mm > leader.along_begin_mm - leader_margin_mm &&
           along_mm < leader.along_end_mm + leader_margin_mm;
  });
}

void extend(FilmExtent& place, double along, double across, bool first) {
  place.along_begin_mm = first ? along : std::min(place.along_begin_mm, along);
  place.along_end_mm = first ? along : std::max(place.along_end_mm, along);
  place.across_begin_mm = first ? across : std::min(place.across_begin_mm, across);
  place.across_end_mm = first ? across : std::max(place.across_end_mm, across);
}

}  // namespace

std::optional<AreaReading> read_edge_print(const DensityStrip& density, const FilmStrip& film,
                                           double base) {
  if (film.format != FilmFormat::f135 || film.perforations.empty()) {
    return std::nullopt;
  }
  AreaReading reading;
  std::vector<double> cores;
  for (const double side : {-1.0, 1.0}) {
    const double in_sight = side < 0.0 ? -film.across_begin_mm : film.across_end_mm;
    const double end = std::min(outer_end_mm, in_sight - 0.4);
    // Where a holder leaves only a rim of the outer rebate, its own edge would pass for print.
    if (end - outer_begin_mm < least_band_mm) {
      continue;
    }
    for (double t = outer_begin_mm; t < end; t += 1.0 / density.pixels_per_mm) {
      const int y = density.row(side * t);
      for (int x = density.column(film.along_begin_mm + 0.5);
           x < density.column(film.along_end_mm - 0.5); ++x) {
        if (!in_leader(film, density.along_mm(x)) && is_core(density, x, y, base + least_net) &&
            static_cast<double>(density.visual.at(x, y)) < base + greatest_net) {
          extend(reading.place, density.along_mm(x), density.across_mm(y), cores.empty());
          cores.push_back(std::min(darkest_density, static_cast<double>(density.visual.at(x, y))));
        }
      }
    }
  }
  reading.area_mm2 =
      static_cast<double>(cores.size()) / (density.pixels_per_mm * density.pixels_per_mm);
  if (reading.area_mm2 < least_core_mm2) {
    return std::nullopt;
  }
  constexpr double middle_of_darker_half = 0.75;
  reading.density = percentile(cores, middle_of_darker_half);
  return reading;
}

std::optional<AreaReading> read_leader(const DensityStrip& density, const FilmStrip& film) {
  for (const FilmExtent& leader : film.leaders) {
    AreaReading reading;
    reading.place = leader;
    const bool at_begin = leader.along_begin_mm <= film.along_begin_mm;
    if (at_begin) {
      reading.place.along_end_mm -= leader_margin_mm;
    } else {
      reading.place.along_begin_mm += leader_margin_mm;
    }
    constexpr double half_height_mm = 11.0;
    reading.place.across_begin_mm = std::max(-half_height_mm, film.across_begin_mm + 0.5);
    reading.place.across_end_mm = std::min(half_height_mm, film.across_end_mm - 0.5);
    std::vector<double> values;
    for (int y = density.row(reading.place.across_begin_mm);
         y < density.row(reading.place.across_end_mm); ++y) {
      for (int x = density.column(reading.place.along_begin_mm);
           x < density.column(reading.place.along_end_mm); ++x) {
        const float value = density.visual.at(x, y);
        // Where the tongue was cut away there is bare light, no leader.
        constexpr float least_leader = 0.5F;
        if (value > least_leader) {
          values.push_back(std::min(darkest_density, static_cast<double>(value)));
        }
      }
    }
    constexpr std::size_t fewest_spots = 200;
    if (values.size() >= fewest_spots) {
      reading.density = median(values);
      reading.area_mm2 =
          static_cast<double>(values.size()) / (density.pixels_per_mm * density.pixels_per_mm);
      return reading;
    }
  }
  return std::nullopt;
}

}  // namespace fogline
