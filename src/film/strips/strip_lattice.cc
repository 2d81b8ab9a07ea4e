#include "film/strips/strip_lattice.h"

#include "numerics/robust.h"

#include <algorithm>
#include <cmath>
#include <map>
#include <numeric>

namespace fogline {

namespace {

/// A hole of a broken row lies within this of the other rows' lattice, mm.
constexpr double on_lattice_mm = 1.0;
/// A predicted hole shows the light of its neighbours within this (log light).
constexpr double same_light_slack = 0.05;

/// Takes the holes of `other` into `film` where they lie on its lattice, and fits the map anew;
/// what doesn't lie there is dropped.
void absorb(FilmStrip& film, const FilmStrip& other) {
  for (Perforation hole : other.perforations) {
    const PointMm at = film.map.film_from_scan(hole.scan);
    const double index = std::round(at.along_mm / film_135::pitch_mm);
    const double off_mm = std::abs(at.along_mm - index * film_135::pitch_mm);
    const int row = at.across_mm < 0.0 ? -1 : +1;
    const double off_row_mm = std::abs(at.across_mm - row * film_135::row_across_mm);
    const bool known = std::any_of(
        film.perforations.begin(), film.perforations.end(), [&](const Perforation& own) {
          return own.row == row && std::abs(own.film.along_mm - index * film_135::pitch_mm) < 0.1;
        });
    if (known || off_mm > on_lattice_mm || off_row_mm > on_lattice_mm) {
      continue;
    }
    hole.row = row;
    hole.film = {index * film_135::pitch_mm, row * film_135::row_across_mm};
    film.perforations.push_back(hole);
  }
  std::vector<MapPoint> points;
  for (const Perforation& hole : film.perforations) {
    points.push_back({hole.film, hole.scan});
  }
  film.map = FilmMap::fitted(points);
}

}  // namespace

void add_predicted_holes(FilmStrip& strip, const FindingImage& image) {
  const auto value = [&](PointMm film) {
    const PointPx at = strip.map.scan_from_film(film);
    const int x = static_cast<int>(std::floor(at.x / image.scan_px));
    const int y = static_cast<int>(std::floor(at.y / image.scan_px));
    const bool inside = x >= 0 && y >= 0 && x < image.log_light.cols && y < image.log_light.rows;
    return inside ? static_cast<double>(image.log_light(y, x)) : NAN;
  };
  for (const int row : {-1, +1}) {
    std::map<int, double> levels;
    for (const Perforation& hole : strip.perforations) {
      if (hole.row == row) {
        levels[static_cast<int>(std::lround(hole.film.along_mm / film_135::pitch_mm))] =
            value(hole.film);
      }
    }
    if (levels.empty()) {
      continue;
    }
    // How much darker than the holes this film is: half of that parts film from bare light.
    std::vector<double> steps;
    for (const auto& [index, light] : levels) {
      steps.push_back(value({index * film_135::pitch_mm, row * 12.3}) - light);
    }
    std::erase_if(steps, [](double step) { return std::isnan(step); });
    const double film_step = steps.empty() ? 0.0 : median(steps);
    constexpr int beyond = 6;
    const int first = levels.begin()->first - beyond;
    const int last = levels.rbegin()->first + beyond;
    for (int index = first; index <= last; ++index) {
      if (levels.contains(index)) {
        continue;
      }
      const PointMm centre{index * film_135::pitch_mm, row * film_135::row_across_mm};
      const double light = value(centre);
      // Beside the hole on the inner side: film, darker than the hole, not the bare light.
      const double rebate = value({centre.along_mm, row * 12.3});
      const double bridge =
          std::max(value({centre.along_mm - 0.5 * film_135::pitch_mm, centre.across_mm}),
                   value({centre.along_mm + 0.5 * film_135::pitch_mm, centre.across_mm}));
      const auto near = levels.lower_bound(index);
      const double known = near != levels.end() ? near->second : levels.rbegin()->second;
      constexpr double least_step = 0.006;
      constexpr double step_share = 0.5;
      const double step = std::max(least_step, step_share * film_step);
      if (std::abs(light - known) < same_light_slack && rebate > light + step &&
          bridge > light + step) {
        Perforation hole;
        hole.row = row;
        hole.film = centre;
        hole.scan = strip.map.scan_from_film(centre);
        hole.whole = false;
        strip.perforations.push_back(hole);
      }
    }
  }
  std::sort(strip.perforations.begin(), strip.perforations.end(),
            [](const Perforation& a, const Perforation& b) {
              return a.row != b.row ? a.row < b.row : a.film.along_mm < b.film.along_mm;
            });
}

std::vector<FilmStrip> strips_apart(std::vector<FilmStrip> strips) {
  std::vector<std::size_t> order(strips.size());
  std::iota(order.begin(), order.end(), std::size_t{0});
  std::sort(order.begin(), order.end(), [&](std::size_t a, std::size_t b) {
    return strips[a].perforations.size() > strips[b].perforations.size();
  });
  std::vector<bool> dropped(strips.size(), false);
  for (std::size_t i = 0; i < order.size(); ++i) {
    for (std::size_t j = i + 1; j < order.size() && !dropped[order[i]]; ++j) {
      FilmStrip& film = strips[order[i]];
      const FilmStrip& other = strips[order[j]];
      const bool on_it = std::any_of(
          other.perforations.begin(), other.perforations.end(), [&](const Perforation& hole) {
            return std::abs(film.map.film_from_scan(hole.scan).across_mm) <
                   film_135::width_mm / 2.0;
          });
      if (!dropped[order[j]] && on_it) {
        absorb(film, other);
        dropped[order[j]] = true;
      }
    }
  }
  std::vector<FilmStrip> result;
  for (std::size_t i = 0; i < strips.size(); ++i) {
    if (!dropped[i]) {
      result.push_back(std::move(strips[i]));
    }
  }
  return result;
}

}  // namespace fogline
