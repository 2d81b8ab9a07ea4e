// Every kind of scan once, through the whole measurement, against the simulator's truth.
#include "base/within_doubt.h"
#include "measure_file.h"

#include <cmath>
#include <cstdint>
#include <ostream>
#include <string>
#include <vector>

#include <gtest/gtest.h>

namespace end_to_end {
namespace {

using fogline::DensitiesAbove;
using fogline::FilmFormat;
using fogline::Fitness;

/// Frames whose border shows are where the truth has them, and none is where it has none. How many
/// those are.
int expect_frames(const Simulation& simulation) {
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
  EXPECT_LE(simulation.scan().frames.size(), simulation.simulated.truth.frames.size());
  return sought;
}

struct Case {
  const char* kind;
  FilmFormat format;
};

/// How the test's name shows a case.
void PrintTo(const Case& shown, std::ostream* out) {
  *out << shown.kind;
}

/// The first scans of a kind, in the order of their seeds, whose pictures are small enough for a
/// test.
std::vector<std::uint64_t> first_small_seeds(const std::string& kind, std::size_t count) {
  constexpr double most_pixels = 6e6;
  constexpr std::uint64_t last_seed = 200;
  std::vector<std::uint64_t> seeds;
  for (std::uint64_t seed = 1; seed <= last_seed && seeds.size() < count; ++seed) {
    const filmsim::Scenario scenario = filmsim::sample_scenario(kind, seed);
    if (1.0 * scenario.width_px * scenario.height_px <= most_pixels) {
      seeds.push_back(seed);
    }
  }
  return seeds;
}

/// Eight bits, lossy compression, and a tone curve that only the picture tells, are indicative.
Fitness fitness_of(const filmsim::EncodingSettings& encoding) {
  return encoding.bits == 8 || encoding.file == filmsim::FileKind::kJpeg ||
                 encoding.tone_told == filmsim::ToneTold::kUntold
             ? Fitness::indicative
             : Fitness::comparable;
}

class FitScan : public testing::TestWithParam<Case> {};

TEST_P(FitScan, IsMeasured) {
  constexpr std::size_t scans = 3;
  const Case& wanted = GetParam();
  const auto seeds = first_small_seeds(wanted.kind, scans);
  ASSERT_EQ(seeds.size(), scans);
  std::size_t fit = 0;
  int frames = 0;
  for (const std::uint64_t seed : seeds) {
    SCOPED_TRACE(seed);
    const filmsim::Scenario scenario = filmsim::sample_scenario(wanted.kind, seed);
    const Fitness fitness = fitness_of(scenario.encoding);
    const Simulation simulation = simulate(scenario);
    const filmsim::Truth& truth = simulation.simulated.truth;
    if (truth.expected_fitness != "fit") {
      continue;
    }
    ++fit;
    const fogline::ScanMeasurement& scan = simulation.scan();
    EXPECT_EQ(scan.fitness, fitness);
    EXPECT_EQ(scan.densities_above, DensitiesAbove::light_path);
    EXPECT_EQ(scan.strips.size(), truth.strips.size());
    for (const fogline::StripMeasurement& strip : scan.strips) {
      EXPECT_EQ(strip.format, wanted.format);
    }
    ASSERT_TRUE(scan.base_fog.has_value());
    const double base = truth.strips.front().base_fog.visual;
    EXPECT_NEAR(scan.base_fog->visual.value, base, 0.01);
    // A curve that only the picture tells leaves three times the doubt. Eight bits of a thin base
    // on a curve that nobody told look like a camera's flattened picture as well, of twice that
    // base and more.
    const double doubt = has_caution(scan, "camera-display-curve") ? 0.3
                         : fitness == Fitness::comparable          ? 0.03
                                                                   : 0.07;
    fogline::test::expect_within_doubt(scan.base_fog->visual, base, doubt);
    frames += expect_frames(simulation);
  }
  EXPECT_GE(fit, 2U);
  EXPECT_GT(frames, 0);
}

INSTANTIATE_TEST_SUITE_P(
    Kinds, FitScan,
    testing::Values(Case{"tiny", FilmFormat::f135}, Case{"flatbed-135-open", FilmFormat::f135},
                    Case{"flatbed-135-holder", FilmFormat::f135},
                    Case{"glass-full", FilmFormat::f135}, Case{"cut-frame", FilmFormat::f135},
                    Case{"camera-frame", FilmFormat::f135}, Case{"camera-strip", FilmFormat::f135},
                    Case{"jpeg", FilmFormat::f135}, Case{"eight-bit", FilmFormat::f135},
                    Case{"png", FilmFormat::f135}, Case{"untold-16-bit", FilmFormat::f135},
                    Case{"half-frame", FilmFormat::f135}, Case{"blank-frames", FilmFormat::f135},
                    Case{"overlap", FilmFormat::f135}, Case{"medium-120", FilmFormat::f120},
                    Case{"sheet", FilmFormat::sheet}));

TEST(MaskedScan, GivesDensitiesAboveBaseOnly) {
  const Simulation simulation = simulate(filmsim::sample_scenario("holder-masked", 6));
  const fogline::ScanMeasurement& scan = simulation.scan();
  EXPECT_EQ(scan.fitness, Fitness::relative);
  EXPECT_EQ(scan.densities_above, DensitiesAbove::base);
  EXPECT_FALSE(scan.base_fog.has_value());
  EXPECT_EQ(scan.base_fog.why().kind, fogline::Unknown::no_zero_for_base);
  EXPECT_TRUE(has_caution(scan, "bare-light-hidden"));
  EXPECT_GT(expect_frames(simulation), 0);
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

// A holder may leave half of each hole: frames, bare light and base are read all the same, and
// where it leaves nothing base plus fog isn't told.
TEST(HolderMasked, HalfCoveredHolesAreHoles) {
  int half_covered = 0;
  for (const std::uint64_t seed : {2, 3, 8, 9}) {
    SCOPED_TRACE(seed);
    const Simulation simulation = simulate(filmsim::sample_scenario("holder-masked", seed));
    const filmsim::StripTruth& truth = simulation.simulated.truth.strips.front();
    EXPECT_GT(expect_frames(simulation), 0);
    EXPECT_EQ(simulation.scan().strips.front().format, FilmFormat::f135);
    const auto& base = simulation.scan().base_fog;
    if (truth.holes_partly > 0) {
      ++half_covered;
      ASSERT_TRUE(base.has_value());
      fogline::test::expect_within_doubt(base->visual, truth.base_fog.visual, 0.05);
      EXPECT_NEAR(base->visual.value, truth.base_fog.visual, 0.01);
    }
  }
  EXPECT_GE(half_covered, 3);
}

// The wedge of the samples is no film to be judged, but one to calibrate by.
TEST(WedgeAlone, IsSentToCalibration) {
  const fogline::RollMeasurement roll =
      measure_file(std::string(FOGLINE_SOURCE_DIR) + "/sample_scans/wedge.tif");
  const fogline::ScanMeasurement& scan = roll.scans.front();
  EXPECT_EQ(scan.fitness, Fitness::unfit);
  EXPECT_TRUE(has_caution(scan, "wedge-alone"));
  EXPECT_TRUE(scan.frames.empty());
}

// A yellow lamp brings red to the top in holes and film alike: green and blue tell base and frames.
TEST(ForeignCamera, AChannelAtTheTopIsLeftOut) {
  const Simulation simulation = simulate(filmsim::sample_scenario("foreign-camera", 1008));
  const fogline::ScanMeasurement& scan = simulation.scan();
  EXPECT_TRUE(has_caution(scan, "channel-clipped"));
  EXPECT_NE(scan.fitness, Fitness::unfit);
  EXPECT_FALSE(scan.tint.kind.has_value());
  EXPECT_GT(expect_frames(simulation), 0);
}

}  // namespace
}  // namespace end_to_end
