// What the foreign populations promise.

#include "simulator/render.h"
#include "simulator/scenario_sampling.h"

#include <algorithm>
#include <cmath>
#include <set>

#include <gtest/gtest.h>
#include <nlohmann/json.hpp>

namespace filmsim {
namespace {

// The same scan by fewer pixels, so that a test needn't wait.
Scenario smaller(Scenario scenario) {
  constexpr double kPixels = 4e5;
  const double pixels = static_cast<double>(scenario.width_px) * scenario.height_px;
  const double share = std::min(1.0, std::sqrt(kPixels / pixels));
  scenario.width_px = static_cast<int>(scenario.width_px * share);
  scenario.height_px = static_cast<int>(scenario.height_px * share);
  scenario.pixels_per_mm *= share;
  return scenario;
}

TEST(ForeignPopulation, EveryKindIsForeignAndOfThatKind) {
  for (const std::string& kind : foreign_kinds()) {
    for (std::uint64_t seed = 1; seed <= 60; ++seed) {
      const Scenario scenario = sample_scenario(kind, seed);
      EXPECT_EQ(scenario.kind, kind);
      EXPECT_TRUE(scenario.foreign.has_value());
      const long pixels = static_cast<long>(scenario.width_px) * scenario.height_px;
      EXPECT_GT(pixels, 80'000L) << kind << ' ' << seed;
      EXPECT_LT(pixels, 17'000'000L) << kind << ' ' << seed;
    }
  }
}

TEST(ForeignPopulation, NoKindAsAssumedIsForeign) {
  for (const std::string& kind : scenario_kinds()) {
    EXPECT_FALSE(sample_scenario(kind, 1).foreign.has_value()) << kind;
    EXPECT_EQ(std::count(foreign_kinds().begin(), foreign_kinds().end(), kind), 0);
  }
}

TEST(ForeignPopulation, SameSeedSameScan) {
  const Simulated one = render(smaller(sample_scenario("foreign-holder", 5)));
  const Simulated two = render(smaller(sample_scenario("foreign-holder", 5)));
  EXPECT_EQ(one.picture.codes, two.picture.codes);
  EXPECT_EQ(truth_json(one), truth_json(two));
}

TEST(ForeignPopulation, CameraPicturesHaveEveryFileAndTag) {
  std::set<FileKind> files;
  std::set<ChromaSampling> chroma;
  std::set<double> lies;
  double greatest_ratio = 0.0;
  for (std::uint64_t seed = 1; seed <= 60; ++seed) {
    const Scenario s = sample_scenario("foreign-camera", seed);
    files.insert(s.encoding.file);
    if (s.encoding.file == FileKind::kJpeg) {
      chroma.insert(s.encoding.chroma);
      EXPECT_GE(s.encoding.jpeg_quality, 40);
      EXPECT_LE(s.encoding.jpeg_quality, 95);
    }
    EXPECT_NE(s.encoding.resolution_tag, ResolutionTag::kRight);
    lies.insert(s.encoding.wrong_pixels_per_inch);
    greatest_ratio = std::max(greatest_ratio, s.foreign->lamp.ratio);
  }
  EXPECT_EQ(files.size(), 3U);
  EXPECT_EQ(chroma.size(), 3U);
  EXPECT_EQ(lies, (std::set<double>{72.0, 96.0, 300.0}));
  EXPECT_GT(greatest_ratio, 3.0);
}

TEST(ForeignPopulation, UnfitScansAreUnfit) {
  std::set<std::string> reasons;
  for (std::uint64_t seed = 1; seed <= 8; ++seed) {
    const Simulated s = render(smaller(sample_scenario("foreign-unfit", seed)));
    EXPECT_EQ(s.truth.expected_fitness, "unfit") << seed;
    reasons.insert(s.truth.reason);
  }
  EXPECT_GE(reasons.size(), 3U);
}

TEST(ForeignPopulation, HoldersCoverHoles) {
  int covered = 0;
  for (std::uint64_t seed = 1; seed <= 6; ++seed) {
    Scenario plan = smaller(sample_scenario("foreign-holder", seed));
    const Simulated held = render(plan);
    plan.holder = {};
    const Simulated open = render(plan);
    covered += held.truth.strips[0].holes_px.size() + 8 < open.truth.strips[0].holes_px.size();
  }
  EXPECT_GE(covered, 4);
}

// A person reads the weak channel where the strong one is at the top.
TEST(ForeignFitness, TheChannelThatTellsMostDecides) {
  Scenario plan = sample_scenario("tiny", 3);
  plan.encoding.channels = 3;
  plan.foreign = ForeignLaws{};
  plan.scanner.lamp = {1.0, 0.5, 0.1};
  plan.scanner.bare_level = 1.6;
  EXPECT_EQ(render(plan).truth.expected_fitness, "fit");
  plan.scanner.lamp = {1.0, 0.99, 0.98};
  EXPECT_EQ(render(plan).truth.expected_fitness, "relative");
  plan.scanner.bare_level = 30.0;
  EXPECT_EQ(render(plan).truth.expected_fitness, "unfit");
}

TEST(ForeignTruth, ToldInTheFileBesideTheScan) {
  const Simulated simulated = render(smaller(sample_scenario("foreign-medium", 2)));
  const auto json = nlohmann::json::parse(truth_json(simulated));
  EXPECT_TRUE(json.at("foreign").contains("callier"));
  EXPECT_FALSE(
      nlohmann::json::parse(truth_json(render(sample_scenario("tiny", 2)))).contains("foreign"));
}

}  // namespace
}  // namespace filmsim
