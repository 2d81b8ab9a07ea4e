#include "film/strips/film_extent.h"

#include "numerics/robust.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <limits>
#include <vector>

namespace fogline {

namespace {

/// Excess over clear film from which a stretch beyond the perforations is holder, not film.
constexpr double opaque_excess = 1.0;
/// Bare light lies below clear film by its density; half of it parts the two. At least this much,
/// for films nearly as clear as air.
constexpr double least_bare_step = 0.006;
/// Rows beside the frame and outside the holes that are clear on every strip, |across| in mm.
constexpr std::array<double, 2> inner_rebate_mm{12.2, 12.6};
constexpr std::array<double, 2> outer_rebate_mm{15.8, 17.0};
constexpr double step_mm = 0.2;

enum class Stretch { film, bare, opaque, nothing };

class ExtentWalk {
 public:
  explicit ExtentWalk(const FilmStrip& film, const ClearLevel& level)
      : film_(film), level_(level), bare_step_(std::max(least_bare_step, 0.5 * level.above_bare)) {}

  /// What lies at a place along the film: film where any of the four rebate bands shows film (a
  /// holder may cover the others), else what most of them show.
  [[nodiscard]] Stretch at_along(double along_mm) const {
    if (!inside(along_mm)) {
      return Stretch::nothing;
    }
    const int x = level_.excess.column(along_mm);
    int bare = 0;
    int opaque = 0;
    for (const auto& band : {inner_rebate_mm, outer_rebate_mm}) {
      for (const double side : {-1.0, 1.0}) {
        std::vector<double> values;
        for (double t = band[0]; t < band[1]; t += 0.1) {
          push(values, x, level_.excess.row(side * t));
        }
        const Stretch seen = kind(values, 0.5);
        if (seen == Stretch::film) {
          return seen;
        }
        bare += seen == Stretch::bare ? 1 : 0;
        opaque += seen == Stretch::opaque ? 1 : 0;
      }
    }
    if (bare + opaque == 0) {
      return Stretch::nothing;
    }
    return bare >= opaque ? Stretch::bare : Stretch::opaque;
  }

  /// What lies at a place across the film, between the perforations.
  [[nodiscard]] Stretch at_across(double across_mm) const {
    std::vector<double> values;
    const int y = level_.excess.row(across_mm);
    for (const Perforation& hole : film_.perforations) {
      for (const double off : {-0.55, -0.5, -0.45, 0.45, 0.5, 0.55}) {
        const double along = hole.film.along_mm + off * film_135::pitch_mm;
        if (inside(along)) {
          push(values, level_.excess.column(along), y);
        }
      }
    }
    // A leader or heavy edge print may darken most bridges; the clearest tell film from holder.
    constexpr double clearest_share = 0.2;
    return kind(values, clearest_share);
  }

  [[nodiscard]] bool inside(double along_mm) const {
    const double end = level_.excess.along_mm(level_.excess.excess.cols - 1);
    return along_mm >= level_.excess.along_begin_mm && along_mm <= end;
  }

 private:
  void push(std::vector<double>& values, int x, int y) const {
    const float value = level_.excess.excess(y, x);
    if (!std::isnan(value)) {
      values.push_back(static_cast<double>(value));
    }
  }

  /// `share`: which percentile of the values speaks for the stretch.
  [[nodiscard]] Stretch kind(const std::vector<double>& values, double share) const {
    if (values.size() < 4) {
      return Stretch::nothing;
    }
    const double level = percentile(values, share);
    if (level < -bare_step_) {
      return Stretch::bare;
    }
    return level > opaque_excess ? Stretch::opaque : Stretch::film;
  }

  const FilmStrip& film_;
  const ClearLevel& level_;
  double bare_step_;
};

/// Walks in steps from `start` while it is film; two steps of something else end it.
double walk_along(const ExtentWalk& walk, double start, double direction, Stretch& ended_by) {
  double at = start;
  for (double next = start + direction * step_mm;; next += direction * step_mm) {
    const Stretch kind = walk.at_along(next);
    if (kind != Stretch::film && walk.at_along(next + direction * step_mm) != Stretch::film) {
      ended_by = kind;
      return at;
    }
    at = next;
  }
}

double walk_across(const ExtentWalk& walk, double direction, Stretch& ended_by) {
  constexpr double start_mm = 12.4;
  constexpr double beyond_mm = film_135::width_mm / 2.0 + 0.5;
  constexpr double fine_mm = 0.1;
  double at = start_mm;
  ended_by = walk.at_across(direction * at);
  if (ended_by != Stretch::film) {
    // The holder covers even the rebate: walk inward to where the picture begins.
    constexpr double innermost_mm = 8.0;
    while (at > innermost_mm && walk.at_across(direction * at) != Stretch::film) {
      at -= fine_mm;
    }
    return direction * at;
  }
  while (at < beyond_mm) {
    ended_by = walk.at_across(direction * (at + fine_mm));
    if (ended_by != Stretch::film) {
      break;
    }
    at += fine_mm;
  }
  return direction * std::min(at, film_135::width_mm / 2.0);
}

}  // namespace

FilmExtent widest_extent(const FilmStrip& film, int image_width_px, int image_height_px,
                         double half_width_mm) {
  double begin = INFINITY;
  double end = -std::numeric_limits<double>::infinity();
  const auto inside = [&](double along) {
    const PointPx at = film.map.scan_from_film({along, 0.0});
    return at.x >= 0.0 && at.y >= 0.0 && at.x <= image_width_px && at.y <= image_height_px;
  };
  for (const Perforation& hole : film.perforations) {
    begin = std::min(begin, hole.film.along_mm);
    end = std::max(end, hole.film.along_mm);
  }
  if (film.perforations.empty()) {
    begin = film.along_begin_mm;
    end = film.along_end_mm;
  }
  // A quarter beyond the border, so that a turned strip's corners are in.
  constexpr double walk_mm = 0.5;
  constexpr double corner_mm = 2.0;
  while (inside(begin - walk_mm)) {
    begin -= walk_mm;
  }
  while (inside(end + walk_mm)) {
    end += walk_mm;
  }
  return {begin - corner_mm, end + corner_mm, -half_width_mm, half_width_mm};
}

void find_film_extent(FilmStrip& film, const ClearLevel& level) {
  double first = INFINITY;
  double last = -std::numeric_limits<double>::infinity();
  for (const Perforation& hole : film.perforations) {
    first = std::min(first, hole.film.along_mm);
    last = std::max(last, hole.film.along_mm);
  }
  const ExtentWalk walk(film, level);
  Stretch begin_by{};
  Stretch end_by{};
  Stretch low_by{};
  Stretch high_by{};
  constexpr double half_hole_mm = film_135::hole_along_mm / 2.0;
  film.along_begin_mm = walk_along(walk, first - half_hole_mm, -1.0, begin_by);
  film.along_end_mm = walk_along(walk, last + half_hole_mm, +1.0, end_by);
  film.across_begin_mm = walk_across(walk, -1.0, low_by);
  film.across_end_mm = walk_across(walk, +1.0, high_by);
  const auto any = [&](Stretch kind) {
    return begin_by == kind || end_by == kind || low_by == kind || high_by == kind;
  };
  film.surround = any(Stretch::bare)     ? Surround::bare_light
                  : any(Stretch::opaque) ? Surround::opaque
                                         : Surround::image_border;
}

double clear_rebate_share(const FilmStrip& film, const ClearLevel& level) {
  constexpr double clear_slack = 0.08;
  double better = 0.0;
  for (const double side : {-1.0, 1.0}) {
    int clear = 0;
    int count = 0;
    for (double s = film.along_begin_mm; s < film.along_end_mm; s += 0.1) {
      for (double t = inner_rebate_mm[0]; t < inner_rebate_mm[1]; t += 0.1) {
        const float value = level.excess.excess(level.excess.row(side * t), level.excess.column(s));
        if (!std::isnan(value)) {
          ++count;
          clear += std::abs(static_cast<double>(value)) < clear_slack ? 1 : 0;
        }
      }
    }
    better = std::max(better, count > 0 ? static_cast<double>(clear) / count : 0.0);
  }
  return better;
}

namespace {

/// Whether fog darkens all the rebate in sight at a place along the film. Edge print darkens single
/// bands only.
bool is_fogged(const FilmStrip& film, const ClearLevel& level, double along_mm) {
  constexpr double fogged_excess = 0.3;
  int bands = 0;
  int fogged = 0;
  for (const auto& band : {inner_rebate_mm, outer_rebate_mm}) {
    for (const double side : {-1.0, 1.0}) {
      if (side * band[1] > film.across_end_mm || side * band[1] < film.across_begin_mm) {
        continue;
      }
      std::vector<double> values;
      const int x = level.excess.column(along_mm);
      for (double t = band[0]; t < band[1]; t += 0.1) {
        const float value = level.excess.excess(level.excess.row(side * t), x);
        if (!std::isnan(value)) {
          values.push_back(static_cast<double>(value));
        }
      }
      const double middle = values.empty() ? NAN : median(values);
      // A leader is cut to a tongue: where it is cut away, bare light says nothing.
      if (middle > -least_bare_step) {
        ++bands;
        fogged += middle > fogged_excess ? 1 : 0;
      }
    }
  }
  // One band may miss it at the cut of the tongue.
  return fogged >= std::max(1, bands - 1) && 2 * fogged > bands;
}

}  // namespace

void find_leaders(FilmStrip& film, const ClearLevel& level) {
  constexpr double least_length_mm = 3.0;
  const auto fogged_at = [&](double along_mm) { return is_fogged(film, level, along_mm); };
  double begin = film.along_begin_mm;
  while (begin < film.along_end_mm && (fogged_at(begin + 0.2) || fogged_at(begin + 1.0))) {
    begin += step_mm;
  }
  double end = film.along_end_mm;
  while (end > begin && (fogged_at(end - 0.2) || fogged_at(end - 1.0))) {
    end -= step_mm;
  }
  if (begin - film.along_begin_mm > least_length_mm) {
    film.leaders.push_back({film.along_begin_mm, begin, film.across_begin_mm, film.across_end_mm});
  }
  if (film.along_end_mm - end > least_length_mm) {
    film.leaders.push_back({end, film.along_end_mm, film.across_begin_mm, film.across_end_mm});
  }
}

}  // namespace fogline
