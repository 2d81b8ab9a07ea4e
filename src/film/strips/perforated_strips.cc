#include "film/strips/perforated_strips.h"

#include "film/strips/plausible_rows.h"
#include "film/strips/strip_lattice.h"
#include "numerics/robust.h"

#include <algorithm>
#include <cmath>
#include <optional>

namespace fogline {

namespace {

/// A row without a partner is believed only near the brightest light of the scan (log light).
constexpr double lone_row_light = 0.12;
/// A lone row has the outside of the film on one side, surely (likeness 0 to 1).
constexpr double sure_outside = 0.6;
/// A hole counts as whole from this share of its full size across the film.
constexpr double whole_share = 0.9;
/// Log light of bare light beside the film: within this of the holes.
constexpr double bare_light_slack = 0.05;
/// Log light above the holes from which a surround is opaque and not film.
constexpr double opaque_log_light = 1.3;

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

}  // namespace

std::vector<FilmStrip> perforated_strips(const FindingImage& image) {
  const std::vector<HoleRow> rows = plausible_rows(image);
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
  strips = strips_apart(std::move(strips));
  for (FilmStrip& strip : strips) {
    add_predicted_holes(strip, image);
  }
  return strips;
}

}  // namespace fogline
