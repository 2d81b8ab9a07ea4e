// One sensitometric test, drawn and read: a film of known curve got known exposures, its densities
// were read with the errors that a scanner leaves, and the curve's numbers are compared.
#pragma once

#include "curve_truth.h"
#include "population_estimate.h"
#include "scan_case.h"
#include "simulator/film_curve.h"

#include <fogline/sensitometry/characteristic_curve.h>
#include <fogline/sensitometry/sensitometry.h>

#include <cstdint>
#include <optional>
#include <string>
#include <vector>

namespace bench {

enum class CurveTest {
  wedge,            ///< contact-printed wedge, calibrated scanner
  exact_bracket,    ///< frames at true times, calibrated scanner
  shutter_bracket,  ///< the same, times off by 0.1 to 0.3 stop
  rough_scan        ///< wedge or bracket on an uncalibrated 8-bit scan with glare
};

struct NumberCase {
  std::string name;
  std::optional<Compared> compared;
};

struct CurveCase {
  std::uint64_t seed = 0;
  CurveTest test = CurveTest::wedge;
  filmsim::CurveSettings film;
  int steps = 0;
  int wild_left_out = 0;
  std::vector<NumberCase> numbers;
  /// Errors of the first four numbers by the estimator that knows the population.
  CurveNumbers least_errors{};
  double seconds = 0.0;
  std::string trouble;
};

/// The films that tests are drawn of.
inline constexpr FilmPopulation film_population;

CurveCase run_curve_case(CurveTest test, std::uint64_t seed, const PopulationEstimator& best);

/// The first four numbers beside the truth.
std::vector<NumberCase> compare_numbers(const fogline::CurveReadings& readings,
                                        const CurveNumbers& truth);

/// Names of `CurveCase::numbers`, in their order.
inline constexpr const char* curve_numbers[] = {"contrast index", "gradient over 1.50", "gamma",
                                                "speed point, log H", "base plus fog"};

}  // namespace bench
