#include "density/lamp.h"

#include "numerics/least_squares.h"
#include "numerics/robust.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <limits>

namespace fogline {

namespace {

/// Half the core of a hole, mm: the hole less 0.4 mm all round.
constexpr double core_margin_mm = 0.4;
/// Bare light beside the film is read in pieces of this length, mm.
constexpr double piece_mm = 6.0;
constexpr double smallest_core_mm = 0.3;
/// Photon noise and rounding of a sample, as log10 light: smaller residuals drop nothing.
constexpr double residual_floor = 0.003;

std::array<double, 5> lamp_terms(PointMm film) {
  const double s = film.along_mm / 100.0;
  const double t = film.across_mm / 10.0;
  return {1.0, s, t, s * t, s * s};
}

bool is_usable(const LightSample& sample, int channels) {
  return std::all_of(sample.light.begin(), sample.light.begin() + channels,
                     [](double light) { return light > 0.0; });
}

/// Number of terms that the samples can carry: a tilt across needs both sides, a bend along needs
/// many.
std::size_t terms_for(const std::vector<LightSample>& samples) {
  double low = INFINITY;
  double high = -std::numeric_limits<double>::infinity();
  for (const LightSample& sample : samples) {
    low = std::min(low, sample.film.across_mm);
    high = std::max(high, sample.film.across_mm);
  }
  constexpr std::size_t for_five = 14;
  constexpr std::size_t for_three = 6;
  constexpr double both_sides_mm = 10.0;
  if (high - low < both_sides_mm || samples.size() < for_three) {
    return samples.size() >= for_three ? 2 : 1;
  }
  return samples.size() >= for_five ? 5 : 3;
}

}  // namespace

LightSample read_light(const StraightStrip& strip, const FilmExtent& area) {
  LightSample sample;
  sample.film = {0.5 * (area.along_begin_mm + area.along_end_mm),
                 0.5 * (area.across_begin_mm + area.across_end_mm)};
  const int x0 = strip.column(area.along_begin_mm);
  const int x1 = strip.column(area.along_end_mm);
  const int y0 = strip.row(area.across_begin_mm);
  const int y1 = strip.row(area.across_end_mm);
  for (int c = 0; c < strip.light.channels(); ++c) {
    std::vector<double> values;
    for (int y = y0; y <= y1; ++y) {
      for (int x = x0; x <= x1; ++x) {
        const float light = strip.light.at(x, y, c);
        if (!std::isnan(light)) {
          values.push_back(static_cast<double>(light));
        }
      }
    }
    sample.light[static_cast<std::size_t>(c)] = values.empty() ? 0.0 : median(values);
  }
  return sample;
}

Lamp Lamp::fitted(const std::vector<LightSample>& samples, int channels) {
  Lamp lamp;
  if (samples.empty()) {
    return lamp;
  }
  const std::size_t terms = terms_for(samples);
  std::vector<double> scatters;
  for (int c = 0; c < channels; ++c) {
    LinearProblem problem;
    problem.coefficients = static_cast<int>(terms);
    for (const LightSample& sample : samples) {
      const std::array<double, 5> row = lamp_terms(sample.film);
      problem.add(std::span(row.data(), terms),
                  std::log10(sample.light[static_cast<std::size_t>(c)]));
    }
    const LinearFit fit = fit_robust(problem, residual_floor);
    if (!fit.solved) {
      return {};
    }
    lamp.coefficients_[static_cast<std::size_t>(c)] = fit.coefficients;
    std::vector<double> residuals;
    for (int row = 0; row < problem.rows(); ++row) {
      const auto first = static_cast<std::size_t>(row) * terms;
      const double predicted = fit.predict(std::span(problem.basis.data() + first, terms));
      residuals.push_back(std::abs(problem.observed[static_cast<std::size_t>(row)] - predicted));
    }
    scatters.push_back(mad_to_sd * median(residuals));
  }
  lamp.scatter_ = *std::max_element(scatters.begin(), scatters.end());
  std::vector<double> levels;
  for (const LightSample& sample : samples) {
    PerChannel<double> light{};
    for (int c = 0; c < channels; ++c) {
      light[static_cast<std::size_t>(c)] = lamp.light(sample.film, c);
    }
    levels.push_back(std::log10(visual_from_channels(light, channels)));
  }
  const auto [low, high] = std::minmax_element(levels.begin(), levels.end());
  lamp.unevenness_ = *high - *low;
  return lamp;
}

double Lamp::light(PointMm film, int channel) const {
  const std::array<double, 5> terms = lamp_terms(film);
  const std::vector<double>& coefficients = coefficients_[static_cast<std::size_t>(channel)];
  double log_light = 0.0;
  for (std::size_t i = 0; i < coefficients.size(); ++i) {
    log_light += coefficients[i] * terms[i];
  }
  return std::pow(10.0, log_light);
}

std::vector<LightSample> samples_in_holes(const StraightStrip& strip, const FilmStrip& film,
                                          const ClippedShare& clips) {
  std::vector<LightSample> samples;
  const double half_along = film_135::hole_along_mm / 2.0 - core_margin_mm;
  for (const Perforation& hole : film.perforations) {
    // A partly covered hole shows its inner part only: keep what lies inside the film in sight.
    const double inner = film_135::row_across_mm - film_135::hole_across_mm / 2.0 + core_margin_mm;
    double outer = film_135::row_across_mm + film_135::hole_across_mm / 2.0 - core_margin_mm;
    const double in_sight = hole.row < 0 ? -film.across_begin_mm : film.across_end_mm;
    outer = std::min(outer, in_sight - core_margin_mm);
    if (outer - inner < smallest_core_mm) {
      continue;
    }
    FilmExtent core{hole.film.along_mm - half_along, hole.film.along_mm + half_along,
                    hole.row < 0 ? -outer : inner, hole.row < 0 ? -inner : outer};
    if (core.along_begin_mm < film.along_begin_mm || core.along_end_mm > film.along_end_mm) {
      continue;
    }
    LightSample sample = read_light(strip, core);
    sample.clipped_share = clips.of(film.map, core);
    if (is_usable(sample, strip.light.channels())) {
      samples.push_back(sample);
    }
  }
  return samples;
}

std::vector<LightSample> samples_beside_film(const FilmStrip& film, const ScanGrid& grid,
                                             const ClippedShare& clips) {
  std::vector<LightSample> samples;
  for (const FilmExtent& bare : film.bare_light) {
    for (double s = bare.along_begin_mm; s + 1.0 < bare.along_end_mm; s += piece_mm) {
      FilmExtent piece = bare;
      piece.along_begin_mm = s;
      piece.along_end_mm = std::min(s + piece_mm, bare.along_end_mm);
      const StraightStrip strip = straighten(grid, film.map, piece, spot_pixels_per_mm);
      LightSample sample = read_light(strip, piece);
      sample.clipped_share = clips.of(film.map, piece);
      if (is_usable(sample, strip.light.channels())) {
        samples.push_back(sample);
      }
    }
  }
  return samples;
}

}  // namespace fogline
