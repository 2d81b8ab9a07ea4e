// A simulated scanner is calibrated by a simulated wedge and then reads film of known density.
#include "base/within_doubt.h"
#include "measure_file.h"
#include "simulator/picture_files.h"
#include "simulator/sample_scans.h"
#include "simulator/wedge_sampling.h"
#include "tables/shipped_knowledge.h"

#include <fogline/base/refusal.h>
#include <fogline/roll/calibrate_scanner.h>
#include <fogline/tables/read_tables.h>

#include <array>
#include <cmath>
#include <fstream>
#include <memory>
#include <optional>

#include <gtest/gtest.h>

namespace end_to_end {
namespace {

using fogline::ScannerDevice;

fogline::WedgeReference reference_of(const filmsim::WedgePlan& wedge) {
  fogline::WedgeReference reference;
  reference.name = "invented wedge";
  for (std::size_t i = 0; i < wedge.certified.size(); ++i) {
    reference.steps.push_back({std::to_string(i + 1), wedge.certified[i], 0.01});
  }
  return reference;
}

struct Calibrated {
  filmsim::WedgeScan scan;
  fogline::CalibrationRun run;
};

Calibrated calibrate(const filmsim::WedgePlan& wedge, const fogline::WedgeReference& reference,
                     ScannerDevice device = ScannerDevice::unknown) {
  const TemporaryFolder folder;
  filmsim::WedgeScan scan = filmsim::render_wedge(wedge);
  write_wedge(scan, wedge, folder.file("wedge.tif"));
  const auto source = fogline::open_scan(folder.file("wedge.tif"), {});
  return {scan, fogline::calibrate_from_wedge(*source, reference, device,
                                              fogline::shipped_knowledge().scan, {})};
}

/// Why the wedge is refused; nothing where it isn't.
std::optional<fogline::Fact<fogline::Refusal>> refusal(const filmsim::WedgePlan& wedge,
                                                       const fogline::WedgeReference& reference) {
  try {
    calibrate(wedge, reference);
  } catch (const fogline::FileError& error) {
    return error.why();
  }
  return std::nullopt;
}

/// Every step found lies where the simulator put the step of that number.
void expect_places(const Calibrated& calibrated, const filmsim::WedgePlan& wedge) {
  for (const fogline::CalibrationStep& step : calibrated.run.calibration.steps) {
    const fogline::PointPx at = fogline::middle_of(step.corners_px);
    const filmsim::Point middle =
        calibrated.scan.middles_px.at(static_cast<std::size_t>(step.number - 1));
    EXPECT_LT(std::hypot(at.x - middle.x, at.y - middle.y),
              0.2 * wedge.pitch_mm * wedge.pixels_per_mm)
        << "step " << step.number;
  }
}

class WedgeAtEveryTurn : public testing::TestWithParam<double> {};

TEST_P(WedgeAtEveryTurn, IsFoundAndLaidOnItsReferenceWithoutBeingToldTheDirection) {
  filmsim::WedgePlan wedge = filmsim::sample_wedge();
  wedge.direction_deg = GetParam();
  const Calibrated calibrated = calibrate(wedge, reference_of(wedge));
  const fogline::ScannerCalibration& calibration = calibrated.run.calibration;
  EXPECT_GE(calibration.steps.size(), 17U);
  expect_places(calibrated, wedge);
  EXPECT_LT(calibration.residual_rms, 0.01);
  EXPECT_GT(calibration.density_limit, 2.0);
}

INSTANTIATE_TEST_SUITE_P(Directions, WedgeAtEveryTurn,
                         testing::Values(0.0, 3.0, 90.0, 87.0, 180.0, 270.0, 267.5));

TEST(CalibratedScan, DirtIsNamedAndDoesNotBendTheResponse) {
  filmsim::WedgePlan wedge = filmsim::sample_wedge();
  const double clean = calibrate(wedge, reference_of(wedge)).run.calibration.residual_rms;
  wedge.dirty_step = 8;
  wedge.dirt_density = 0.12;
  const Calibrated calibrated = calibrate(wedge, reference_of(wedge));
  for (const fogline::CalibrationStep& step : calibrated.run.calibration.steps) {
    EXPECT_EQ(step.outlier, step.number == 9) << step.number;
    if (step.number == 9) {
      EXPECT_NEAR(step.density - step.reference_density, 0.12, 0.03);
    }
  }
  EXPECT_LT(calibrated.run.calibration.residual_rms, 1.5 * clean);
}

TEST(CalibratedScan, WrongReferencesAreRefused) {
  filmsim::WedgePlan wedge = filmsim::sample_wedge();
  fogline::WedgeReference fewer = reference_of(wedge);
  fewer.steps.resize(10);
  const auto more_seen = refusal(wedge, fewer);
  ASSERT_TRUE(more_seen);
  EXPECT_EQ(more_seen->kind, fogline::Refusal::more_steps_than_reference);
  EXPECT_EQ(more_seen->numbers.at(1), 10.0);
  // A mask hides bare light and the film's ends: nothing tells which of more steps are missing.
  wedge.bare_mm = 0.0;
  fogline::WedgeReference more = reference_of(wedge);
  for (int i = 0; i < 4; ++i) {
    more.steps.push_back({"more", more.steps.back().density + 0.15, 0.01});
  }
  const auto fewer_seen = refusal(wedge, more);
  ASSERT_TRUE(fewer_seen);
  EXPECT_EQ(fewer_seen->kind, fogline::Refusal::steps_without_bare_light);
}

bool warns(const Calibrated& calibrated, const std::string& code) {
  const auto& cautions = calibrated.run.cautions;
  return std::any_of(cautions.begin(), cautions.end(), [&](const fogline::Caution& caution) {
    return fogline::caution_code(caution.fact.kind) == code;
  });
}

TEST(CalibratedScan, AnotherWedgesReferenceIsToldByTheFilmsEndAndByItsDensities) {
  const filmsim::WedgePlan wedge = filmsim::sample_wedge();
  const auto other = refusal(wedge, fogline::nominal_wedge(41, 0.05));
  ASSERT_TRUE(other);
  EXPECT_EQ(other->kind, fogline::Refusal::wedge_ends_early);
  fogline::WedgeReference twice = reference_of(wedge);
  for (fogline::ReferenceStep& step : twice.steps) {
    step.density *= 2.0;
  }
  EXPECT_TRUE(warns(calibrate(wedge, twice), "reference-doubtful"));
  EXPECT_FALSE(warns(calibrate(wedge, reference_of(wedge)), "reference-doubtful"));
}

// The bare light and the lightest steps are at the top code, the darkest beyond the scanner's
// reach: the film's dark end counts.
TEST(CalibratedScan, AClippedBeginningIsCountedFromTheDarkEnd) {
  filmsim::WedgePlan wedge = filmsim::sample_wedge();
  wedge.scanner.bare_level = 1.6;
  const Calibrated calibrated = calibrate(wedge, reference_of(wedge));
  expect_places(calibrated, wedge);
  EXPECT_FALSE(calibrated.run.calibration.bare_code.has_value());
  EXPECT_TRUE(warns(calibrated, "steps-counted-from-dark-end"));
}

/// Mean |error| over what is compared.
struct Errors {
  double base_fog = 0.0;
  double range = 0.0;
  int covered = 0;
  int count = 0;

  void add(double value, double truth, double u95) {
    covered += std::abs(value - truth) <= u95 ? 1 : 0;
    ++count;
  }
};

fogline::ScanMeasurement measured(const std::string& path,
                                  const fogline::ScannerCalibration* scanner) {
  const auto source = fogline::open_scan(path, {});
  fogline::MeasureOptions options = fogline::shipped_options();
  if (scanner != nullptr) {
    options.scanner = *scanner;
  }
  return fogline::measure_roll(*source, options).measurement.scans.front();
}

void add_errors(Errors& errors, const fogline::ScanMeasurement& scan,
                const filmsim::Simulated& strip) {
  ASSERT_TRUE(scan.base_fog.has_value());
  const double base_truth = strip.truth.strips.front().base_fog.visual;
  errors.base_fog += std::abs(scan.base_fog->visual.value - base_truth);
  errors.add(scan.base_fog->visual.value, base_truth, scan.base_fog->visual.u95);
  for (const fogline::FrameMeasurement& frame : scan.frames) {
    for (const filmsim::FrameTruth& truth : strip.truth.frames) {
      if (iou(frame.box_px, truth.box_px.x, truth.box_px.y, truth.box_px.width,
              truth.box_px.height) > 0.8 &&
          frame.tone.range && !frame.tone.range->at_least && truth.shadow && truth.highlight) {
        const double range = *truth.highlight - *truth.shadow;
        errors.range += std::abs(frame.tone.range->value - range);
        errors.add(frame.tone.range->value, range, frame.tone.range->u95);
      }
    }
  }
}

// Scanners that bend their codes, five of them, each with its own wedge: calibrated they read a
// strip several times better, and say how well.
TEST(CalibratedScan, BentScannersReadFilmBetterAndWithinTheirDoubt) {
  Errors with;
  Errors without;
  for (const std::uint64_t seed : {3U, 9U, 15U, 27U, 39U}) {
    const filmsim::CalibratedPair pair = filmsim::sample_pair({false, true}, seed);
    const Calibrated calibrated = calibrate(pair.wedge, reference_of(pair.wedge));
    const TemporaryFolder folder;
    const filmsim::Simulated strip = filmsim::render(pair.strip);
    const std::string path = write_scan(strip, folder.file("strip.tif"));
    add_errors(with, measured(path, &calibrated.run.calibration), strip);
    add_errors(without, measured(path, nullptr), strip);
  }
  EXPECT_LT(with.range, 0.5 * without.range);
  EXPECT_GE(with.covered, with.count - 1) << with.count;
}

TEST(CalibratedScan, ReadsTheSameFromTheFileItWasWrittenTo) {
  const filmsim::CalibratedPair pair = filmsim::sample_pair({false, true}, 3);
  const Calibrated calibrated = calibrate(pair.wedge, reference_of(pair.wedge));
  const TemporaryFolder folder;
  std::ofstream(folder.file("scanner.json"))
      << fogline::scanner_file_text(calibrated.run.calibration);
  const fogline::ScannerCalibration read = fogline::read_scanner_file(folder.file("scanner.json"));
  const filmsim::Simulated strip = filmsim::render(pair.strip);
  const std::string path = write_scan(strip, folder.file("strip.tif"));
  const fogline::ScanMeasurement a = measured(path, &calibrated.run.calibration);
  const fogline::ScanMeasurement b = measured(path, &read);
  ASSERT_TRUE(a.base_fog && b.base_fog);
  EXPECT_EQ(a.base_fog->visual.value, b.base_fog->visual.value);
  EXPECT_EQ(a.base_fog->visual.u95, b.base_fog->visual.u95);
}

// Eight bits where the calibration has sixteen, and levels moved in the software: told, and
// doubted.
TEST(CalibratedScan, OtherSettingsAreTold) {
  const filmsim::CalibratedPair pair = filmsim::sample_pair({false, true}, 3);
  ASSERT_EQ(pair.wedge.encoding.bits, 16);
  const Calibrated calibrated = calibrate(pair.wedge, reference_of(pair.wedge));
  filmsim::Scenario other = pair.strip;
  const TemporaryFolder folder;
  double base_truth = 0.0;
  const auto scan_of = [&](const filmsim::Scenario& scenario) {
    const filmsim::Simulated strip = filmsim::render(scenario);
    base_truth = strip.truth.strips.front().base_fog.visual;
    const std::string path = write_scan(strip, folder.file("strip.tif"));
    return measured(path, &calibrated.run.calibration);
  };
  const fogline::ScanMeasurement same = scan_of(pair.strip);
  EXPECT_FALSE(has_caution(same, "scanner-bits"));
  EXPECT_FALSE(has_caution(same, "scanner-zero"));
  other.encoding.bits = 8;
  EXPECT_TRUE(has_caution(scan_of(other), "scanner-bits"));
  other = pair.strip;
  other.scanner.bare_level *= 0.8;
  const fogline::ScanMeasurement darker = scan_of(other);
  EXPECT_TRUE(has_caution(darker, "scanner-zero"));
  ASSERT_TRUE(same.base_fog && darker.base_fog);
  EXPECT_GT(darker.base_fog->visual.u95, same.base_fog->visual.u95);
  fogline::test::expect_within_doubt(darker.base_fog->visual, base_truth, 0.1);
  other = pair.strip;
  other.encoding.channels = pair.wedge.encoding.channels == 1 ? 3 : 1;
  EXPECT_THROW(scan_of(other), fogline::FileError);
}

// Nothing is told beyond what the wedge showed: a calibration from a wedge to 1.2 gives lower
// bounds for denser film.
TEST(CalibratedScan, NothingIsExtrapolated) {
  filmsim::CalibratedPair pair = filmsim::sample_pair({false, true}, 9);
  filmsim::WedgePlan& wedge = pair.wedge;
  wedge.densities = {0.05, 0.2, 0.35, 0.5, 0.65, 0.8};
  wedge.certified = wedge.densities;
  wedge.pitch_mm = 8.0;
  const Calibrated calibrated = calibrate(wedge, reference_of(wedge));
  EXPECT_NEAR(calibrated.run.calibration.shown_to_density, 0.8, 0.01);
  const TemporaryFolder folder;
  const filmsim::Simulated strip = filmsim::render(pair.strip);
  const std::string path = write_scan(strip, folder.file("strip.tif"));
  const fogline::ScanMeasurement scan = measured(path, &calibrated.run.calibration);
  int bounds = 0;
  for (const fogline::FrameMeasurement& frame : scan.frames) {
    for (const auto& tone : {frame.tone.middle, frame.tone.highlight}) {
      if (tone && tone->at_least) {
        ++bounds;
        EXPECT_LE(tone->value, 0.8 + 1e-6);
      } else if (tone) {
        EXPECT_LE(tone->value, 0.8 + 1e-6);
      }
    }
  }
  EXPECT_GT(bounds, 0);
}

/// Both pictures in one, the second below the first, on bare light; shifts the strip's truth by
/// nothing, since it stays at the top left.
filmsim::Picture stacked(const filmsim::Picture& above, const filmsim::Picture& below,
                         const filmsim::Picture& bare_from) {
  filmsim::Picture both = above;
  both.width = std::max(above.width, below.width);
  both.height = above.height + below.height;
  both.codes.clear();
  const auto channels = static_cast<std::size_t>(both.channels);
  for (int y = 0; y < both.height; ++y) {
    for (int x = 0; x < both.width; ++x) {
      const bool first = y < above.height;
      const filmsim::Picture& from = first ? above : below;
      const int row = first ? y : y - above.height;
      const bool inside = x < from.width;
      for (std::size_t c = 0; c < channels; ++c) {
        const int channel = static_cast<int>(c);
        both.codes.push_back(inside ? from.code(x, row, channel) : bare_from.code(1, 1, channel));
      }
    }
  }
  return both;
}

// The wedge lies in the strip's own scan: calibration and measurement in one go.
TEST(CalibratedScan, AWedgeBesideTheStripDoesBoth) {
  filmsim::CalibratedPair pair = filmsim::sample_pair({false, true}, 9);
  pair.wedge.pixels_per_mm = pair.strip.pixels_per_mm;
  pair.wedge.direction_deg = 0.0;
  pair.wedge.bare_mm = -1.0;
  const filmsim::Simulated strip = filmsim::render(pair.strip);
  const filmsim::WedgeScan wedge = filmsim::render_wedge(pair.wedge);
  const TemporaryFolder folder;
  constexpr double mm_per_inch = 25.4;
  write_tiff(stacked(strip.picture, wedge.picture, wedge.picture), pair.wedge.encoding,
             pair.wedge.pixels_per_mm * mm_per_inch, folder.file("both.tif"));
  const auto source = fogline::open_scan(folder.file("both.tif"), {});
  const fogline::WedgeReference reference = reference_of(pair.wedge);
  fogline::MeasureOptions options = fogline::shipped_options();
  options.wedge = reference;
  const fogline::ScanMeasurement scan =
      fogline::measure_roll(*source, options).measurement.scans.front();
  ASSERT_TRUE(scan.calibration.has_value());
  EXPECT_TRUE(scan.calibration->own_wedge);
  EXPECT_EQ(scan.fitness, fogline::Fitness::measured);
  EXPECT_EQ(scan.strips.size(), 1U) << "the wedge is no strip";
  EXPECT_GE(scan.steps.size(), 15U);
  Errors errors;
  add_errors(errors, scan, strip);
  EXPECT_GE(errors.covered, errors.count - 1) << errors.count;
  EXPECT_GE(errors.count, 2);
}

}  // namespace
}  // namespace end_to_end
