#include "film/strips/clear_level.h"

#include "film/strips/log_strip.h"
#include "numerics/least_squares.h"
#include "numerics/robust.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <vector>

namespace fogline {

namespace {

/// Half sizes of the clear patch between two holes of a row, mm: clear of the holes by 0.5 mm.
constexpr double patch_along_mm = 0.85;
constexpr double patch_across_mm = 0.9;
/// Middle and half width of the rebate between frames and perforations, |across| in mm.
constexpr double inner_rebate_mm = 12.4;
constexpr double inner_rebate_half_mm = 0.2;
/// Patches darker than their neighbours by this are printed or fogged, never clear.
constexpr double patch_scale_floor = 0.01;
/// Half size of the core of a hole, mm: its rim is blurred by lens and film thickness.
constexpr double core_along_mm = 0.55;
constexpr double core_across_mm = 0.9;
/// What a holder leaves of a hole lies anywhere in it: half its width less the rim, and the part of
/// it that is bare light even where little is left.
constexpr double whole_across_mm = 1.3;
constexpr double bare_share = 0.1;
/// Lengths of a window in which the brightest film is looked for, mm.
constexpr double piece_mm = 12.0;
/// Share of a piece that a gap takes: 2 mm in 38 less what is dirty.
constexpr double brightest_share = 0.02;

std::vector<double> box_values(const cv::Mat1f& image, const ExcessImage& frame, PointMm centre,
                               double half_along_mm, double half_across_mm) {
  std::vector<double> values;
  const int x0 = frame.column(centre.along_mm - half_along_mm);
  const int x1 = frame.column(centre.along_mm + half_along_mm);
  const int y0 = frame.row(centre.across_mm - half_across_mm);
  const int y1 = frame.row(centre.across_mm + half_across_mm);
  for (int y = y0; y <= y1; ++y) {
    for (int x = x0; x <= x1; ++x) {
      if (!std::isnan(image(y, x))) {
        values.push_back(static_cast<double>(image(y, x)));
      }
    }
  }
  return values;
}

std::array<double, 5> course_terms(double along_mm, double across_mm) {
  const double s = along_mm / 100.0;
  const double t = across_mm / 10.0;
  return {1.0, s, t, s * t, s * s};
}

/// Fits a smooth course to clear patches; fewer terms where there are few patches.
LinearFit fit_course(const std::vector<PointMm>& places, const std::vector<double>& levels) {
  constexpr int most_terms = 5;
  for (const int terms : {most_terms, 3, 1}) {
    LinearProblem problem;
    problem.coefficients = terms;
    for (std::size_t i = 0; i < places.size(); ++i) {
      const std::array<double, 5> row = course_terms(places[i].along_mm, places[i].across_mm);
      problem.add(std::span(row.data(), static_cast<std::size_t>(terms)), levels[i]);
    }
    constexpr int patches_a_term = 3;
    if (problem.rows() >= patches_a_term * terms) {
      LinearFit fit = fit_robust(problem, patch_scale_floor);
      if (fit.solved) {
        return fit;
      }
    }
  }
  return {};
}

/// Holes of a strip and the log light in each.
struct HoleLights {
  std::vector<PointMm> places;
  std::vector<double> levels;
};

HoleLights hole_lights(const cv::Mat1f& log_light, const FilmStrip& film,
                       const ExcessImage& frame) {
  HoleLights lights;
  for (const Perforation& hole : film.perforations) {
    const std::vector<double> core = box_values(log_light, frame, hole.film, core_along_mm,
                                                hole.whole ? core_across_mm : whole_across_mm);
    if (!core.empty()) {
      lights.places.push_back(hole.film);
      lights.levels.push_back(hole.whole ? median(core) : percentile(core, bare_share));
    }
  }
  return lights;
}

ExcessImage frame_of(const StraightStrip& strip) {
  ExcessImage frame;
  frame.pixels_per_mm = strip.pixels_per_mm;
  frame.along_begin_mm = strip.extent.along_begin_mm;
  frame.across_begin_mm = strip.extent.across_begin_mm;
  frame.excess = cv::Mat1f(strip.light.height(), strip.light.width());
  return frame;
}

void subtract_course(ExcessImage& image, const LinearFit& course) {
  for (int y = 0; y < image.excess.rows; ++y) {
    const double across = image.across_begin_mm + (y + 0.5) / image.pixels_per_mm;
    for (int x = 0; x < image.excess.cols; ++x) {
      const std::array<double, 5> terms = course_terms(image.along_mm(x), across);
      image.excess(y, x) -= static_cast<float>(course.predict(terms));
    }
  }
}

/// Scatter of clear film within its patches.
double noise_of(const ExcessImage& image, const std::vector<PointMm>& places) {
  std::vector<double> noises;
  for (const PointMm& place : places) {
    noises.push_back(
        robust_location(box_values(image.excess, image, place, patch_along_mm, patch_across_mm))
            .scale);
  }
  return median(noises);
}

}  // namespace

ClearLevel clear_level_from_rebate(const StraightStrip& strip, const FilmStrip& film) {
  ClearLevel level;
  level.excess = frame_of(strip);
  level.excess.excess = log_light_of(strip, 1.0);
  // The lamp as the holes show it: its course is then no course of the film's.
  const HoleLights holes = hole_lights(level.excess.excess, film, level.excess);
  const LinearFit lamp = fit_course(holes.places, holes.levels);
  if (lamp.solved) {
    subtract_course(level.excess, lamp);
  } else if (!holes.levels.empty()) {
    level.excess.excess -= median(holes.levels);
  }

  std::vector<PointMm> places;
  std::vector<double> levels;
  for (const Perforation& hole : film.perforations) {
    for (const double side : {-0.5, 0.5}) {
      PointMm centre{hole.film.along_mm + side * film_135::pitch_mm, hole.film.across_mm};
      double half_across = patch_across_mm;
      if (!hole.whole) {
        // Beside a partly covered hole only the rebate between holes and frames is surely in sight.
        centre.across_mm = hole.row * inner_rebate_mm;
        half_across = inner_rebate_half_mm;
      }
      const std::vector<double> patch =
          box_values(level.excess.excess, level.excess, centre, patch_along_mm, half_across);
      constexpr std::size_t fewest_spots = 30;
      if (patch.size() >= fewest_spots) {
        places.push_back(centre);
        levels.push_back(median(patch));
      }
    }
  }
  if (levels.empty()) {
    return clear_level_from_brightest(strip);
  }
  // Printed and fogged patches may be many: start from the clearest half.
  const double middle = percentile(levels, 0.4);
  constexpr double clear_band = 0.15;
  std::vector<PointMm> clear_places;
  std::vector<double> clear_levels;
  for (std::size_t i = 0; i < levels.size(); ++i) {
    if (levels[i] < middle + clear_band) {
      clear_places.push_back(places[i]);
      clear_levels.push_back(levels[i]);
    }
  }
  const LinearFit course = fit_course(clear_places, clear_levels);
  level.above_bare = median(clear_levels);
  if (course.solved) {
    subtract_course(level.excess, course);
  } else {
    level.excess.excess -= level.above_bare;
  }
  level.noise = noise_of(level.excess, clear_places);
  return level;
}

ClearLevel clear_level_from_brightest(const StraightStrip& strip) {
  ClearLevel level;
  level.excess = frame_of(strip);
  cv::Mat1f& image = level.excess.excess;
  image = log_light_of(strip, 1.0);
  std::vector<PointMm> places;
  std::vector<double> levels;
  const int piece = std::max(1, static_cast<int>(piece_mm * strip.pixels_per_mm));
  const double middle_mm = 0.5 * (strip.extent.across_begin_mm + strip.extent.across_end_mm);
  for (int x = 0; x < image.cols; x += piece) {
    std::vector<double> values;
    for (int y = 0; y < image.rows; ++y) {
      for (int i = x; i < std::min(x + piece, image.cols); ++i) {
        if (!std::isnan(image(y, i))) {
          values.push_back(static_cast<double>(image(y, i)));
        }
      }
    }
    if (!values.empty()) {
      places.push_back({level.excess.along_mm(x + piece / 2), middle_mm});
      levels.push_back(percentile(values, brightest_share));
    }
  }
  if (levels.empty()) {
    return level;
  }
  // Pieces without a gap read too dark: keep those near the brightest, then a straight course.
  constexpr double lamp_course = 0.08;
  const double brightest = percentile(levels, 0.1);
  LinearProblem problem;
  problem.coefficients = 2;
  for (std::size_t i = 0; i < levels.size(); ++i) {
    if (levels[i] < brightest + lamp_course) {
      problem.add(std::array{1.0, places[i].along_mm / 100.0}, levels[i]);
    }
  }
  const LinearFit course = fit_robust(problem, patch_scale_floor);
  level.above_bare = brightest;
  if (course.solved && problem.rows() >= 4) {
    subtract_course(level.excess, course);
  } else {
    image -= brightest;
  }
  // The spread below clear level is noise alone.
  std::vector<double> below;
  for (const float value : cv::Mat1f(image)) {
    if (value < 0.0F) {
      below.push_back(static_cast<double>(-value));
    }
  }
  level.noise = below.empty() ? 0.0 : mad_to_sd * median(below);
  return level;
}

}  // namespace fogline
