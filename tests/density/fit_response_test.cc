// The response fit on published scanner tables and on invented scanners.
#include "density/fit_response.h"

#include "density/invented_scanner.h"
#include "density/published_tables.h"

#include <cmath>
#include <cstdio>
#include <fstream>
#include <random>
#include <string>
#include <vector>

#include <gtest/gtest.h>

namespace fogline {
namespace {

using published::TableStep;

ResponseProblem problem_of(const std::vector<TableStep>& table, double full_code,
                           double density_doubt) {
  ResponseProblem problem;
  problem.stray = {0.010, 0.007, false};
  for (std::size_t i = 0; i < table.size(); ++i) {
    ShownLight light;
    light.step.number = static_cast<int>(i) + 1;
    light.step.reference_density = table[i].density;
    light.step.code[0] = table[i].code / full_code;
    light.density_doubt = density_doubt;
    light.code_doubt[0] = table[i].scatter / full_code;
    light.stray_field.fill(even_field(0.3));
    problem.lights.push_back(light);
  }
  return problem;
}

constexpr double read_to_a_hundredth = 0.007;

/// Density that a fitted scanner reads of a code, against the code of bare light.
double read_density(const ScannerCalibration& calibration, double code, double field,
                    double bare_code, double bare_field) {
  const CodeCurve& curve = calibration.curves.of_channel[0];
  const double share = calibration.stray.share;
  const double lamp = curve.light_of(bare_code) / (1.0 + share * bare_field);
  return -std::log10(curve.light_of(code) / lamp - share * field);
}

TEST(FitResponse, DigitiserAIsFittedToAHundredthAndItsOutlierNamed) {
  const ResponseOutcome outcome =
      fit_response(problem_of(published::digitiser_a, 65535, read_to_a_hundredth));
  ASSERT_FALSE(outcome.failure);
  const ScannerCalibration& calibration = outcome.calibration;
  ASSERT_EQ(calibration.steps.size(), published::digitiser_a.size());
  for (const CalibrationStep& step : calibration.steps) {
    EXPECT_EQ(step.outlier, step.number == 5) << step.reference_density;
    if (!step.outlier && step.reference_density < 2.7) {
      EXPECT_NEAR(step.density, step.reference_density, 0.016);
    }
  }
  EXPECT_LT(calibration.residual_rms, 0.01);
  // The scatter of its codes reaches 0.02 in density at 3.1; the step of 3.60 is beyond use.
  EXPECT_GT(calibration.density_limit, 2.6);
  EXPECT_LT(calibration.density_limit, 3.4);
}

TEST(FitResponse, HalfOfDigitiserAReadsTheOtherHalf) {
  std::vector<TableStep> half;
  for (std::size_t i = 0; i < published::digitiser_a.size(); i += 2) {
    half.push_back(published::digitiser_a[i]);
  }
  const ResponseOutcome outcome = fit_response(problem_of(half, 65535, read_to_a_hundredth));
  ASSERT_FALSE(outcome.failure);
  const double first =
      read_density(outcome.calibration, half[0].code / 65535, 0.3, half[0].code / 65535, 0.3) -
      half[0].density;
  for (std::size_t i = 1;
       i < published::digitiser_a.size() && published::digitiser_a[i].density <= 2.6; i += 2) {
    const double read = read_density(outcome.calibration, published::digitiser_a[i].code / 65535,
                                     0.3, half[0].code / 65535, 0.3) -
                        first;
    EXPECT_NEAR(read, published::digitiser_a[i].density, 0.02);
  }
}

TEST(FitResponse, DigitiserEWithinItsReportsOwnDeviations) {
  const ResponseOutcome sixteen =
      fit_response(problem_of(published::digitiser_e_16, 65535, read_to_a_hundredth));
  ASSERT_FALSE(sixteen.failure);
  for (const CalibrationStep& step : sixteen.calibration.steps) {
    EXPECT_NEAR(step.density, step.reference_density, 0.014);
  }
  const ResponseOutcome eight =
      fit_response(problem_of(published::digitiser_e_8, 255, read_to_a_hundredth));
  ASSERT_FALSE(eight.failure);
  for (const CalibrationStep& step : eight.calibration.steps) {
    if (step.reference_density < 1.8) {
      EXPECT_NEAR(step.density, step.reference_density, 0.017);
    }
  }
}

TEST(FitResponse, ARealFlatbedWithABentCurveAndAFloor) {
  std::ifstream file(FOGLINE_SHARED_DIR "/real/flatbed-codes.csv");
  if (!file) {
    GTEST_SKIP() << "the measured flatbed isn't here";
  }
  std::vector<TableStep> table;
  std::string line;
  std::getline(file, line);
  int number = 0;
  TableStep step{};
  while (std::getline(file, line) &&
         std::sscanf(line.c_str(), "%d,%lf,%lf", &number, &step.density, &step.code) == 3) {
    step.scatter = 10.0;
    table.push_back(step);
  }
  ASSERT_EQ(table.size(), 32U);
  const ResponseOutcome outcome = fit_response(problem_of(table, 65535, 0.01));
  ASSERT_FALSE(outcome.failure);
  for (const CalibrationStep& read : outcome.calibration.steps) {
    if (read.used && read.reference_density < 2.5) {
      EXPECT_NEAR(read.density, read.reference_density, 0.03);
    }
  }
  EXPECT_LT(outcome.calibration.density_limit, 3.7);
}

struct Score {
  double squares = 0.0;
  int count = 0;
  int covered = 0;

  void add(double error, double u95) {
    squares += error * error;
    ++count;
    covered += std::abs(error) <= u95 ? 1 : 0;
  }
  [[nodiscard]] double rms() const { return std::sqrt(squares / count); }
  [[nodiscard]] double coverage() const { return static_cast<double>(covered) / count; }
};

struct Scores {
  Score to_two;
  Score deeper;
};

/// Reads film of random density in random surroundings with 150 fitted scanners, down to each one's
/// limit. `told`: opaque areas told the share of stray light to within 0.0005 (at density 3
/// that is a tenth of what passes the film where its surroundings differ by a fifth of the field).
Scores score_invented(bool told) {
  std::mt19937 random(7);
  std::uniform_real_distribution<double> uniform;
  std::normal_distribution<double> normal;
  Scores scores;
  for (int i = 0; i < 150; ++i) {
    const invented::Scanner scanner = invented::scanner(random);
    ResponseProblem problem = invented::shown(scanner, {}, random);
    if (told) {
      const double told_share = scanner.stray_share + 0.0005 * normal(random);
      problem.stray = {std::max(0.0, told_share), 0.0005, true};
    }
    const ResponseOutcome outcome = fit_response(problem);
    EXPECT_FALSE(outcome.failure);
    const ScannerCalibration& calibration = outcome.calibration;
    for (int k = 0; k < 8; ++k) {
      const double density = 0.05 + 3.0 * uniform(random);
      const double field = 0.15 + 0.6 * uniform(random);
      if (density > calibration.density_limit) {
        continue;
      }
      const double read = read_density(calibration, scanner.code(std::pow(10.0, -density), field),
                                       field, scanner.code(1.0, 0.7), 0.7);
      const CalibratedDoubt doubt = calibration.doubt_at(density);
      const double stray = calibration.stray_doubt_in(even_field(field), density) *
                           std::pow(10.0, density) / std::log(10.0);
      Score& score = density <= 2.0 ? scores.to_two : scores.deeper;
      score.add(read - density, 1.96 * std::hypot(doubt.fit, stray));
    }
  }
  return scores;
}

// Goals of this project: rms 0.015 to density 2, 0.04 to 3. Without anything opaque in sight the
// share of stray light stays doubtful and the second isn't always in reach: u95 says so.
TEST(FitResponse, InventedScannersAreReadToTheGoalAndWithinTheirDoubt) {
  const Scores told = score_invented(true);
  EXPECT_LT(told.to_two.rms(), 0.015);
  EXPECT_LT(told.deeper.rms(), 0.04);
  EXPECT_GT(told.to_two.coverage(), 0.93);
  EXPECT_GT(told.deeper.coverage(), 0.93);
  const Scores untold = score_invented(false);
  EXPECT_LT(untold.to_two.rms(), 0.015);
  EXPECT_GT(untold.to_two.coverage(), 0.93);
  EXPECT_GT(untold.deeper.coverage(), 0.88);
}

TEST(FitResponse, ADirtyStepIsLeftOutAndNamed) {
  std::mt19937 random(11);
  int named = 0;
  int falsely = 0;
  constexpr int scanners = 40;
  for (int i = 0; i < scanners; ++i) {
    const invented::Scanner scanner = invented::scanner(random);
    ResponseProblem problem = invented::shown(scanner, {}, random);
    const std::size_t dirty = 3 + static_cast<std::size_t>(i % 10);
    problem.lights[dirty].step.code[0] *= 0.8;
    const ResponseOutcome outcome = fit_response(problem);
    ASSERT_FALSE(outcome.failure);
    for (std::size_t k = 0; k < outcome.calibration.steps.size(); ++k) {
      const CalibrationStep& step = outcome.calibration.steps[k];
      named += step.outlier && k == dirty ? 1 : 0;
      falsely += step.outlier && k != dirty ? 1 : 0;
      EXPECT_EQ(!step.left_out, step.used);
    }
  }
  EXPECT_EQ(named, scanners);
  EXPECT_LE(falsely, 2);
}

TEST(FitResponse, RefusesCodesThatRiseOrAreTooFew) {
  std::vector<TableStep> turned = published::digitiser_a;
  for (TableStep& step : turned) {
    step.code = 65535 - step.code;
  }
  EXPECT_EQ(fit_response(problem_of(turned, 65535, 0.01)).failure, Refusal::codes_not_falling);
  const std::vector<TableStep> three(published::digitiser_a.begin(),
                                     published::digitiser_a.begin() + 3);
  EXPECT_EQ(fit_response(problem_of(three, 65535, 0.01)).failure, Refusal::too_few_lights);
}

// JCGM 100 clause 5.2: a film in the wedge's own light shares its error of stray light; in other
// light the error grows with the difference, and how far glare reaches counts where near and far
// surroundings differ.
TEST(FitResponse, StrayLightIsDoubtfulByHowOtherTheFilmsSurroundingsAre) {
  ScannerCalibration calibration;
  calibration.stray.share = 0.01;
  calibration.stray.share_doubt = 0.004;
  calibration.doubt = {{0.0, 0.0, 0.0, even_field(0.5)}, {3.0, 0.0, 0.0, even_field(0.3)}};
  EXPECT_NEAR(calibration.stray_doubt_in(even_field(0.4), 1.5), 0.10 * 0.004, 1e-12);
  EXPECT_NEAR(calibration.stray_doubt_in(even_field(0.9), 1.5), 0.5 * 0.004, 1e-12);
  // Near, middle, far: 0.1, 0.4, 0.7; their standard deviation is 0.3 sqrt(2/3).
  EXPECT_NEAR(calibration.stray_doubt_in({0.1, 0.4, 0.7}, 1.5),
              std::hypot(0.10 * 0.004, 0.01 * 0.3 * std::sqrt(1.0 / 3.0)), 1e-12);
}

TEST(FitResponse, AKnownShareOfStrayLightIsKeptAndADoubtfulOneSharpened) {
  std::mt19937 random(3);
  double before = 0.0;
  double after = 0.0;
  for (int i = 0; i < 30; ++i) {
    const invented::Scanner scanner = invented::scanner(random);
    ResponseProblem problem = invented::shown(scanner, {}, random);
    const ResponseOutcome weighed = fit_response(problem);
    ASSERT_FALSE(weighed.failure);
    before += std::abs(problem.stray.share - scanner.stray_share);
    after += std::abs(weighed.calibration.stray.share - scanner.stray_share);
    problem.stray.share = scanner.stray_share;
    problem.stray.share_doubt = 0.0;
    const ResponseOutcome known = fit_response(problem);
    ASSERT_FALSE(known.failure);
    EXPECT_EQ(known.calibration.stray.share, scanner.stray_share);
    const StrayField brighter = even_field(known.calibration.doubt_at(1.0).field[0] + 0.3);
    EXPECT_LT(known.calibration.stray_doubt_in(brighter, 1.0),
              weighed.calibration.stray_doubt_in(brighter, 1.0));
  }
  EXPECT_LT(after, 0.7 * before);
}

}  // namespace
}  // namespace fogline
