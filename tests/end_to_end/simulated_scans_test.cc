// Every kind of scan once, through the whole measurement, against the simulator's truth.
#include "measure_file.h"

#include <cmath>
#include <ostream>

#include <gtest/gtest.h>

namespace end_to_end {
namespace {

using fogline::DensitiesAbove;
using fogline::FilmFormat;
using fogline::Fitness;

/// Frames whose border shows are where the truth has them, and none is where it has none.
void expect_frames(const Simulation& simulation) {
  int sought = 0;
  for (const filmsim::FrameTruth& truth : simulation.simulated.truth.frames) {
    if (!truth.edge_shows || truth.cut) {
      continue;
    }
    ++sought;
    double best = 0.0;
    for (const fogline::FrameMeasurement& frame : simulation.scan().frames) {
      best = std::max(best, iou(frame.box_px, truth.box_px.x, truth.box_px.y, truth.box_px.width,
                                truth.box_px.height));
    }
    EXPECT_GE(best, 0.9) << "frame " << truth.number;
  }
  EXPECT_GT(sought, 0);
  EXPECT_LE(simulation.scan().frames.size(), simulation.simulated.truth.frames.size());
}

void expect_base_fog(const Simulation& simulation) {
  ASSERT_TRUE(simulation.scan().base_fog.has_value());
  const fogline::Quantity& base = simulation.scan().base_fog->visual;
  const double truth = simulation.simulated.truth.strips.front().base_fog.visual;
  EXPECT_NEAR(base.value, truth, 0.02);
  EXPECT_LE(std::abs(base.value - truth), base.u95);
}

struct Case {
  const char* kind;
  std::uint64_t seed;
  FilmFormat format;
  Fitness fitness;
};

/// How the test's name shows a case.
void PrintTo(const Case& shown, std::ostream* out) {
  *out << shown.kind << " " << shown.seed;
}

class FitScan : public testing::TestWithParam<Case> {};

TEST_P(FitScan, IsMeasured) {
  const Case& wanted = GetParam();
  const Simulation simulation = simulate(filmsim::sample_scenario(wanted.kind, wanted.seed));
  const fogline::ScanMeasurement& scan = simulation.scan();
  EXPECT_EQ(scan.fitness, wanted.fitness);
  EXPECT_EQ(scan.densities_above, DensitiesAbove::light_path);
  EXPECT_EQ(scan.strips.size(), simulation.simulated.truth.strips.size());
  for (const fogline::StripMeasurement& strip : scan.strips) {
    EXPECT_EQ(strip.format, wanted.format);
  }
  expect_base_fog(simulation);
  expect_frames(simulation);
}

// Seeds are those whose pictures are small. Eight bits, and a tone curve that only the picture
// tells, are indicative.
INSTANTIATE_TEST_SUITE_P(
    Kinds, FitScan,
    testing::Values(Case{"tiny", 11, FilmFormat::f135, Fitness::comparable},
                    Case{"flatbed-135-open", 18, FilmFormat::f135, Fitness::comparable},
                    Case{"flatbed-135-holder", 1, FilmFormat::f135, Fitness::comparable},
                    Case{"glass-full", 28, FilmFormat::f135, Fitness::comparable},
                    Case{"cut-frame", 11, FilmFormat::f135, Fitness::comparable},
                    Case{"camera-frame", 11, FilmFormat::f135, Fitness::comparable},
                    Case{"camera-strip", 11, FilmFormat::f135, Fitness::comparable},
                    Case{"jpeg", 1, FilmFormat::f135, Fitness::indicative},
                    Case{"eight-bit", 1, FilmFormat::f135, Fitness::indicative},
                    Case{"png", 34, FilmFormat::f135, Fitness::comparable},
                    Case{"untold-16-bit", 16, FilmFormat::f135, Fitness::indicative},
                    Case{"untold-16-bit", 34, FilmFormat::f135, Fitness::indicative},
                    Case{"half-frame", 2, FilmFormat::f135, Fitness::comparable},
                    Case{"blank-frames", 2, FilmFormat::f135, Fitness::comparable},
                    Case{"overlap", 1, FilmFormat::f135, Fitness::comparable},
                    Case{"medium-120", 1, FilmFormat::f120, Fitness::comparable},
                    Case{"sheet", 1, FilmFormat::sheet, Fitness::comparable}));

TEST(MaskedScan, GivesDensitiesAboveBaseOnly) {
  const Simulation simulation = simulate(filmsim::sample_scenario("holder-masked", 6));
  const fogline::ScanMeasurement& scan = simulation.scan();
  EXPECT_EQ(scan.fitness, Fitness::relative);
  EXPECT_EQ(scan.densities_above, DensitiesAbove::base);
  EXPECT_FALSE(scan.base_fog.has_value());
  EXPECT_EQ(scan.base_fog.why().kind, fogline::Unknown::no_zero_for_base);
  EXPECT_TRUE(has_caution(scan, "bare-light-hidden"));
  expect_frames(simulation);
}

TEST(ClippedScan, GivesDensitiesAboveBaseOnly) {
  const Simulation simulation = simulate(filmsim::sample_scenario("clipped-zero", 13));
  ASSERT_EQ(simulation.simulated.truth.expected_fitness, "relative");
  EXPECT_EQ(simulation.scan().fitness, Fitness::relative);
  EXPECT_TRUE(has_caution(simulation.scan(), "bare-light-clipped"));
  EXPECT_FALSE(simulation.scan().base_fog.has_value());
}

struct Refusal {
  const char* kind;
  std::uint64_t seed;
  const char* code;
};

/// How the test's name shows a case.
void PrintTo(const Refusal& shown, std::ostream* out) {
  *out << shown.kind << " " << shown.seed;
}

class UnfitScan : public testing::TestWithParam<Refusal> {};

TEST_P(UnfitScan, IsRefusedWithItsReason) {
  const Simulation simulation =
      simulate(filmsim::sample_scenario(GetParam().kind, GetParam().seed));
  const fogline::ScanMeasurement& scan = simulation.scan();
  EXPECT_EQ(scan.fitness, Fitness::unfit);
  EXPECT_TRUE(has_caution(scan, GetParam().code));
  EXPECT_FALSE(scan.base_fog.has_value());
  for (const fogline::FrameMeasurement& frame : scan.frames) {
    EXPECT_FALSE(frame.tone.shadow.has_value());
    EXPECT_EQ(frame.tone.shadow.why().kind, fogline::Unknown::no_densities);
  }
}

INSTANTIATE_TEST_SUITE_P(Kinds, UnfitScan,
                         testing::Values(Refusal{"unfit-inverted", 28, "inverted"},
                                         Refusal{"unfit-stretched", 39, "base-clipped"},
                                         Refusal{"unfit-no-film", 1, "no-negative"},
                                         Refusal{"unfit-positive", 2, "no-negative"}));

// Perforation pitch 4.750 mm and film width 34.975 mm (ISO 1007; values written from memory) give
// the scale at any resolution, whatever the file's tag says: within 0.5 %, width over pitch within
// 1 %.
class Resolution : public testing::TestWithParam<double> {};

TEST_P(Resolution, IsToldByThePerforations) {
  filmsim::Scenario scenario = filmsim::sample_scenario("cut-frame", 2);
  const double finer = GetParam() / scenario.pixels_per_mm;
  scenario.width_px = static_cast<int>(scenario.width_px * finer);
  scenario.height_px = static_cast<int>(scenario.height_px * finer);
  scenario.pixels_per_mm = GetParam();
  scenario.encoding.resolution_tag = filmsim::ResolutionTag::kWrong;
  // Upright and unshrunken, so that the upright box is as wide as film is.
  filmsim::StripGeometrySettings& geometry = scenario.strips.front().geometry;
  geometry.rotation_deg = geometry.shrinkage = geometry.bow_mm = 0.0;
  const Simulation simulation = simulate(scenario);
  ASSERT_TRUE(simulation.scan().pixels_per_mm.has_value());
  EXPECT_NEAR(*simulation.scan().pixels_per_mm / GetParam(), 1.0, 0.005);
  const fogline::StripMeasurement& strip = simulation.scan().strips.front();
  const double width_px = std::min(strip.box_px.width, strip.box_px.height);
  const double pitch_px = 4.750 * *simulation.scan().pixels_per_mm;
  EXPECT_NEAR(width_px / pitch_px / (34.975 / 4.750), 1.0, 0.01);
}

INSTANTIATE_TEST_SUITE_P(FiveResolutions, Resolution, testing::Values(8.0, 12.0, 17.0, 24.0, 36.0));

}  // namespace
}  // namespace end_to_end
