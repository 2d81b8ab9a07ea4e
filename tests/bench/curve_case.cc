#include "curve_case.h"

#include "simulator/random.h"

#include <fogline/sensitometry/characteristic_curve.h>
#include <fogline/sensitometry/sensitometry.h>

#include <algorithm>
#include <chrono>
#include <cmath>

namespace bench {

namespace {

using filmsim::Random;

/// What a scanner leaves of errors, density.
struct ScannerErrors {
  double own = 0.0;    // of each step
  double share = 0.0;  // of all net densities alike
  double base = 0.0;
};

filmsim::CurveSettings sample_film(Random& random) {
  constexpr FilmPopulation p = film_population;
  filmsim::CurveSettings film;
  film.family = static_cast<filmsim::CurveFamily>(random.integer(0, 4));
  film.contrast_index = random.uniform(p.least_contrast_index, p.greatest_contrast_index);
  film.maximum_density = random.uniform(p.least_maximum_density, p.greatest_maximum_density);
  film.toe = random.uniform(p.shortest_toe, p.longest_toe);
  film.shoulder = random.uniform(p.softest_shoulder, p.sharpest_shoulder);
  film.speed_point_log_h = random.uniform(p.least_speed_point_log_h, p.greatest_speed_point_log_h);
  return film;
}

/// Exposures of the steps, from a stop or two below the speed point.
std::vector<double> sample_exposures(CurveTest test, const filmsim::CurveSettings& film,
                                     Random& random) {
  std::vector<double> log_h;
  const bool wedge =
      test == CurveTest::wedge || (test == CurveTest::rough_scan && random.chance(0.5));
  if (wedge) {
    constexpr int counts[] = {11, 21, 31, 41};
    const int count = counts[random.chance(0.6) ? 1 : random.integer(0, 3)];
    const double begin = film.speed_point_log_h - random.uniform(0.1, 0.8);
    for (int i = 0; i < count; ++i) {
      log_h.push_back(begin + 3.0 * i / (count - 1));
    }
    return log_h;
  }
  // The metered exposure lies ten times above the speed point; brackets run from five stops below.
  const double metered = film.speed_point_log_h + random.uniform(0.9, 1.15);
  const double stride = random.chance(0.7) ? 1.0 : 2.0;
  for (double stop = -5.0; stop <= 5.0; stop += stride) {
    log_h.push_back(metered + stop * std::log10(2.0));
  }
  return log_h;
}

ScannerErrors errors_of(CurveTest test, Random& random) {
  if (test == CurveTest::rough_scan) {
    return {random.uniform(0.01, 0.03), random.uniform(0.05, 0.15), 0.01};
  }
  return {random.uniform(0.003, 0.008), random.uniform(0.003, 0.008), 0.003};
}

std::optional<Compared> compare(double truth, const fogline::CurveReading& reading) {
  if (!reading) {
    return std::nullopt;
  }
  return Compared{truth, reading->value, reading->u95, reading->lower95, reading->upper95, false};
}

}  // namespace

std::vector<NumberCase> compare_numbers(const fogline::CurveReadings& readings,
                                        const CurveNumbers& truth) {
  return {{curve_numbers[0], compare(truth[0], readings.contrast_index)},
          {curve_numbers[1], compare(truth[1], readings.gradient_150)},
          {curve_numbers[2], compare(truth[2], readings.gamma)},
          {curve_numbers[3], compare(truth[3], readings.speed_point_log_h)}};
}

CurveCase run_curve_case(CurveTest test, std::uint64_t seed, const PopulationEstimator& best) {
  constexpr std::uint64_t stream = 5501;
  Random random(seed, stream + static_cast<std::uint64_t>(test));
  CurveCase result;
  result.seed = seed;
  result.test = test;
  result.film = sample_film(random);
  const filmsim::FilmCurve film(result.film);
  const ScannerErrors errors = errors_of(test, random);
  const bool shutter = test == CurveTest::shutter_bracket;
  const double log_h_doubt = shutter ? random.uniform(0.1, 0.3) * std::log10(2.0) : 0.0;
  const double base = random.uniform(0.18, 0.4);
  const double scale = 1.0 + random.normal(0.0, errors.share);
  fogline::ExposedSteps exposed;
  for (const double log_h : sample_exposures(test, result.film, random)) {
    const double got = log_h + random.normal(0.0, log_h_doubt);
    const double density = base + scale * film.density(got) + random.normal(0.0, errors.own);
    exposed.steps.push_back({"", log_h, log_h_doubt, density, errors.own, std::nullopt});
  }
  result.steps = static_cast<int>(exposed.steps.size());
  exposed.base_fog = base + random.normal(0.0, errors.base);
  exposed.base_fog_doubt = errors.base;
  exposed.density_share_doubt = errors.share;
  const auto net = [&](double log_h) { return film.density(log_h); };
  const double end_log_h = exposed.steps.back().log_h;
  const CurveNumbers truth = numbers_of_curve(
      net, {result.film.speed_point_log_h, exposed.steps.front().log_h, end_log_h});
  result.least_errors = best.estimate(exposed, result.film);
  for (std::size_t n = 0; n < truth.size(); ++n) {
    result.least_errors[n] -= truth[n];
  }
  const auto begin = std::chrono::steady_clock::now();
  const auto fitted = fogline::fit_characteristic_curve(exposed);
  if (!fitted) {
    result.trouble = fogline::fact_row(fitted.why().kind).code;
    return result;
  }
  const fogline::FittedCurve& curve = *fitted;
  const fogline::CurveReadings readings = fogline::read_curve(curve);
  result.seconds = std::chrono::duration<double>(std::chrono::steady_clock::now() - begin).count();
  for (const fogline::ExposedStep& step : curve.steps) {
    result.wild_left_out += step.left_out ? 1 : 0;
  }
  result.numbers = compare_numbers(
      readings, numbers_of_curve(
                    net, {result.film.speed_point_log_h, curve.begin_log_h, curve.sure_end_log_h}));
  result.numbers.push_back(
      {curve_numbers[4],
       Compared{base, curve.base_fog, 1.96 * curve.base_fog_doubt, {}, {}, false}});
  return result;
}

}  // namespace bench
