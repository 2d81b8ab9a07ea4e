#include "film/perforated_strips.h"

#include <fogline/numerics/robust.h>

#include <algorithm>
#include <cmath>
#include <map>
#include <numeric>
#include <optional>

namespace fogline {

namespace {

/// Inner edge of one row to inner edge of the other, in pitches, and how far perspective, blur and
/// the level of the cut may change it.
constexpr double inner_distance_pitches =
    2.0 * (film_135::row_across_mm - film_135::hole_across_mm / 2.0) / film_135::pitch_mm;
constexpr double inner_distance_slack = 0.06;
/// All strips of a scan lie at one scale; a row whose pitch is off by more is something else.
constexpr double same_scale_share = 0.08;
/// Holes are the brightest thing near them: their light may lie so far (log) below the brightest.
constexpr double hole_light_slack = 0.08;
/// A row without a partner is believed only near the brightest light of the scan (log light).
constexpr double lone_row_light = 0.12;
/// A hole of a broken row lies within this of the other rows' lattice, mm.
constexpr double on_lattice_mm = 1.0;
/// A lone row has the outside of the film on one side, surely (likeness 0 to 1).
constexpr double sure_outside = 0.6;
/// A hole is 2.794 mm across on a pitch of 4.750; blur and the strip's turn may add a fifth, a
/// holder only takes away.
constexpr double greatest_across_share = 1.22 * film_135::hole_across_mm / film_135::pitch_mm;
/// Among the rows of one scan all see the same lamp: a row darker than the brightest by more (log
/// light) is made of windows in a picture. Lamps and lenses fall off by less.
constexpr double same_lamp_slack = 0.15;
/// A hole counts as whole from this share of its full size across the film.
constexpr double whole_share = 0.9;
/// Log light of bare light beside the film: within this of the holes.
constexpr double bare_light_slack = 0.05;
/// Log light above the holes from which a surround is opaque and not film.
constexpr double opaque_log_light = 1.3;

double mm_per_px(const HoleRow& row) {
  return film_135::pitch_mm / row.pitch_px;
}

double hole_level(const HoleRow& row) {
  std::vector<double> levels;
  for (const RowHole& hole : row.holes) {
    levels.push_back(hole.spot.level);
  }
  return median(levels);
}

double value_at(const FindingImage& image, const HoleRow& row, double along, double across) {
  const int x = static_cast<int>(std::floor(row.along_x ? along : across));
  const int y = static_cast<int>(std::floor(row.along_x ? across : along));
  if (x < 0 || y < 0 || x >= image.log_light.cols || y >= image.log_light.rows) {
    return NAN;
  }
  return static_cast<double>(image.log_light(y, x));
}

/// Log light along the row at a distance across from its middle line, in mm; empty where the line
/// leaves the image.
std::vector<double> line_values(const FindingImage& image, const HoleRow& row, double offset_mm) {
  std::vector<double> values;
  const double offset_px = offset_mm / mm_per_px(row);
  const double begin = row.along(row.holes.front().spot);
  const double end = row.along(row.holes.back().spot);
  const double slope = (row.across_at(end) - row.across_at(begin)) / (end - begin);
  const double middle = row.across_at(begin);
  for (double along = begin; along <= end; along += 0.25 * row.pitch_px) {
    const double value = value_at(image, row, along, middle + slope * (along - begin) + offset_px);
    if (!std::isnan(value)) {
      values.push_back(value);
    }
  }
  return values;
}

/// Holes of one row show one lamp through one kind of hole, and clear film lies between them:
/// their light agrees, and so does the light between them, which is darker.
bool is_uniform(const FindingImage& image, const HoleRow& row) {
  std::vector<double> holes;
  std::vector<double> between;
  for (const RowHole& hole : row.holes) {
    const double along = row.along(hole.spot);
    holes.push_back(hole.spot.level);
    const double light = value_at(image, row, along + 0.5 * row.pitch_px, row.across(hole.spot));
    if (!std::isnan(light)) {
      between.push_back(light);
    }
  }
  constexpr double hole_scatter = 0.05;
  constexpr double least_step = 0.006;
  return robust_location(holes).scale < hole_scatter &&
         median(between) > median(holes) + least_step;
}

bool is_bright_enough(const FindingImage& image, const HoleRow& row) {
  // Between the holes and to both sides, out to a pitch: nothing there may be much brighter.
  std::vector<double> near;
  for (double offset_mm = -film_135::pitch_mm; offset_mm <= film_135::pitch_mm; offset_mm += 0.5) {
    const std::vector<double> line = line_values(image, row, offset_mm);
    near.insert(near.end(), line.begin(), line.end());
  }
  constexpr double brightest_share = 0.02;
  return hole_level(row) < percentile(near, brightest_share) + hole_light_slack;
}

/// How much the side `direction` (-1, +1) of a lone row looks like the outside of the film, 0 to 1.
double outside_likeness(const FindingImage& image, const HoleRow& row, int direction) {
  constexpr double edge_mm = film_135::hole_across_mm / 2.0 + film_135::hole_to_edge_mm;
  const double bare = hole_level(row);
  double likeness = 0.0;
  int lines = 0;
  for (const double beyond_mm : {0.6, 1.2, 2.0}) {
    const std::vector<double> values = line_values(image, row, direction * (edge_mm + beyond_mm));
    ++lines;
    if (values.empty()) {
      likeness += 1.0;
      continue;
    }
    const LocationScale seen = robust_location(values);
    const bool bare_light = std::abs(seen.location - bare) < bare_light_slack;
    const bool opaque = seen.location > bare + opaque_log_light && seen.scale < 0.3;
    likeness += bare_light || opaque ? 1.0 : 0.0;
  }
  return likeness / lines;
}

/// A pair of rows, the first at smaller across position in the image; one may be absent.
struct RowPair {
  const HoleRow* low = nullptr;
  const HoleRow* high = nullptr;
};

bool are_pair(const HoleRow& low, const HoleRow& high) {
  const double begin =
      std::max(low.along(low.holes.front().spot), high.along(high.holes.front().spot));
  const double end = std::min(low.along(low.holes.back().spot), high.along(high.holes.back().spot));
  const double pitch = 0.5 * (low.pitch_px + high.pitch_px);
  if (end - begin < pitch || std::abs(low.pitch_px - high.pitch_px) > same_scale_share * pitch) {
    return false;
  }
  constexpr std::size_t fewest_holes_together = 8;
  if (low.holes.size() + high.holes.size() < fewest_holes_together) {
    return false;
  }
  const double middle = 0.5 * (begin + end);
  const double inner = high.across_at(middle) - low.across_at(middle) -
                       0.5 * (low.median_across_size() + high.median_across_size());
  return std::abs(inner / pitch / inner_distance_pitches - 1.0) < inner_distance_slack;
}

std::vector<RowPair> pair_rows(const FindingImage& image, const std::vector<HoleRow>& rows) {
  std::vector<bool> used(rows.size(), false);
  std::vector<RowPair> pairs;
  for (std::size_t i = 0; i < rows.size(); ++i) {
    for (std::size_t j = 0; j < rows.size(); ++j) {
      if (!used[i] && !used[j] && i != j && are_pair(rows[i], rows[j])) {
        pairs.push_back({&rows[i], &rows[j]});
        used[i] = used[j] = true;
      }
    }
  }
  constexpr std::size_t fewest_holes_alone = 5;
  for (std::size_t i = 0; i < rows.size(); ++i) {
    const bool shows_lamp = hole_level(rows[i]) < lone_row_light;
    if (used[i] || rows[i].holes.size() < fewest_holes_alone || !shows_lamp) {
      continue;
    }
    const double below = outside_likeness(image, rows[i], -1);
    const double above = outside_likeness(image, rows[i], +1);
    if (std::max(below, above) < sure_outside) {
      continue;
    }
    const bool outside_below = below >= above;
    pairs.push_back(outside_below ? RowPair{&rows[i], nullptr} : RowPair{nullptr, &rows[i]});
  }
  return pairs;
}

/// Builds a strip from its rows: numbers the holes of both in one lattice, fits the map.
class StripBuilder {
 public:
  StripBuilder(const FindingImage& image, const RowPair& pair) : image_(image), pair_(pair) {}

  FilmStrip build() {
    const HoleRow& first = pair_.low != nullptr ? *pair_.low : *pair_.high;
    origin_ = first.along(first.holes.front().spot);
    slope_ = slope_of(first);
    if (pair_.low != nullptr) {
      add_row(*pair_.low, true, first);
    }
    if (pair_.high != nullptr) {
      add_row(*pair_.high, false, first);
    }
    FilmStrip strip;
    strip.format = FilmFormat::f135;
    std::vector<MapPoint> points;
    for (const Perforation& hole : holes_) {
      points.push_back({hole.film, hole.scan});
    }
    strip.map = FilmMap::fitted(points);
    strip.perforations = std::move(holes_);
    return strip;
  }

 private:
  static double slope_of(const HoleRow& row) {
    const double begin = row.along(row.holes.front().spot);
    const double end = row.along(row.holes.back().spot);
    return (row.across_at(end) - row.across_at(begin)) / (end - begin);
  }

  void add_row(const HoleRow& row, bool low, const HoleRow& first) {
    // The film lies to the high side of the low row and to the low side of the high row. Film
    // coordinates grow with y where the film runs along x, and against x where it runs along y.
    const int toward_film = low ? +1 : -1;
    const int row_sign = row.along_x == low ? -1 : +1;
    const double px_mm = mm_per_px(row);
    const double full_px = film_135::hole_across_mm / px_mm;
    // The same hole in the other row lies straight across the film: shifted by the strip's turn.
    const double apart_px = row.across_at(row.along(row.holes.front().spot)) -
                            first.across_at(row.along(row.holes.front().spot));
    for (const RowHole& hole : row.holes) {
      const double along = row.along(hole.spot);
      const double on_first = along + slope_ * apart_px;
      const double index = std::round((on_first - origin_) / first_pitch_at(first, on_first));
      const double size = row.across_size(hole.spot);
      double across = row.across(hole.spot);
      const bool whole = size > whole_share * full_px;
      if (!whole) {
        const double inner_edge = across + toward_film * 0.5 * size;
        across = inner_edge - toward_film * 0.5 * full_px;
      }
      Perforation found;
      found.row = row_sign;
      found.film = {index * film_135::pitch_mm, row_sign * film_135::row_across_mm};
      found.scan = {(row.along_x ? along : across) * image_.scan_px,
                    (row.along_x ? across : along) * image_.scan_px};
      found.along_mm = row.along_size(hole.spot) * px_mm;
      found.across_mm = size * px_mm;
      found.whole = whole;
      holes_.push_back(found);
    }
  }

  /// Mean pitch of the first row up to a place: perspective makes it vary along the film.
  [[nodiscard]] double first_pitch_at(const HoleRow& first, double along) const {
    double best = INFINITY;
    double pitch = first.pitch_px;
    for (const RowHole& hole : first.holes) {
      const int index = hole.index - first.holes.front().index;
      const double off = std::abs(first.along(hole.spot) - along);
      if (index > 0 && off < best) {
        best = off;
        pitch = (first.along(hole.spot) - origin_) / index;
      }
    }
    return pitch;
  }

  const FindingImage& image_;
  RowPair pair_;
  double origin_ = 0.0;
  double slope_ = 0.0;
  std::vector<Perforation> holes_;
};

/// Adds the perforations that the strip's lattice predicts and the picture shows, though no whole
/// spot was found there: cut by the image border, torn, dirty. Bright as the others in the middle,
/// with film beside them.
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
      if (std::abs(light - known) < bare_light_slack && rebate > light + step &&
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

std::vector<HoleRow> plausible_rows(const FindingImage& image, const std::vector<BrightSpot>& spots,
                                    bool along_x) {
  std::vector<HoleRow> rows = hole_rows(spots, along_x);
  std::erase_if(rows, [&](const HoleRow& row) {
    return !is_bright_enough(image, row) || !is_uniform(image, row) ||
           row.median_across_size() > greatest_across_share * row.pitch_px;
  });
  double brightest = INFINITY;
  for (const HoleRow& row : rows) {
    brightest = std::min(brightest, hole_level(row));
  }
  std::erase_if(rows,
                [&](const HoleRow& row) { return hole_level(row) > brightest + same_lamp_slack; });
  // The scale that most holes agree on.
  std::vector<double> pitches;
  for (const HoleRow& row : rows) {
    pitches.insert(pitches.end(), row.holes.size(), row.pitch_px);
  }
  const double common = median(pitches);
  std::erase_if(rows, [&](const HoleRow& row) {
    return std::abs(row.pitch_px - common) > same_scale_share * common;
  });
  return rows;
}

double mean_level(const std::vector<HoleRow>& rows) {
  std::vector<double> levels;
  for (const HoleRow& row : rows) {
    levels.insert(levels.end(), row.holes.size(), hole_level(row));
  }
  return median(levels);
}

std::size_t holes_in(const std::vector<HoleRow>& rows) {
  std::size_t count = 0;
  for (const HoleRow& row : rows) {
    count += row.holes.size();
  }
  return count;
}

/// Rows along the axis on which the film runs: the brighter ones where the two axes differ in
/// light (real holes show the lamp), else the more numerous.
const std::vector<HoleRow>& likelier_rows(const std::vector<HoleRow>& a,
                                          const std::vector<HoleRow>& b) {
  if (!a.empty() && !b.empty() && std::abs(mean_level(a) - mean_level(b)) > same_lamp_slack) {
    return mean_level(a) < mean_level(b) ? a : b;
  }
  return holes_in(a) >= holes_in(b) ? a : b;
}

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

/// Two pieces of film never lie on one another: where the holes of one strip lie within the width
/// of another, both are one strip whose rows broke (perspective, dirt) or one is an accident. The
/// strip with more holes keeps what fits of the other.
std::vector<FilmStrip> apart(std::vector<FilmStrip> strips) {
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

}  // namespace

std::vector<FilmStrip> perforated_strips(const FindingImage& image) {
  const std::vector<BrightSpot> spots = bright_spots(image);
  const std::vector<HoleRow> along_x = plausible_rows(image, spots, true);
  const std::vector<HoleRow> along_y = plausible_rows(image, spots, false);
  const std::vector<HoleRow>& rows = likelier_rows(along_x, along_y);
  std::vector<RowPair> pairs = pair_rows(image, rows);
  const auto place = [](const RowPair& pair) {
    const HoleRow& row = pair.low != nullptr ? *pair.low : *pair.high;
    return row.across_at(row.along(row.holes.front().spot));
  };
  std::sort(pairs.begin(), pairs.end(),
            [&](const RowPair& a, const RowPair& b) { return place(a) < place(b); });
  std::vector<FilmStrip> strips;
  for (const RowPair& pair : pairs) {
    FilmStrip strip = StripBuilder(image, pair).build();
    if (!strip.map.empty()) {
      strips.push_back(std::move(strip));
    }
  }
  strips = apart(std::move(strips));
  for (FilmStrip& strip : strips) {
    add_predicted_holes(strip, image);
  }
  return strips;
}

}  // namespace fogline
