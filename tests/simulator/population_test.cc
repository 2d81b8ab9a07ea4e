// What each named population promises.

#include "simulator/render.h"
#include "simulator/scenario_sampling.h"

#include <stdexcept>

#include <gtest/gtest.h>

namespace filmsim {
namespace {

Simulated scan(const std::string& kind, std::uint64_t seed = 1) {
  return render(sample_scenario(kind, seed));
}

TEST(Population, UnknownKindIsRefused) {
  EXPECT_THROW(sample_scenario("no-such-kind", 1), std::invalid_argument);
}

TEST(Population, SameSeedSameScan) {
  const Simulated one = scan("tiny", 12);
  const Simulated two = scan("tiny", 12);
  EXPECT_EQ(one.picture.codes, two.picture.codes);
  EXPECT_EQ(truth_json(one), truth_json(two));
  EXPECT_NE(one.picture.codes, scan("tiny", 13).picture.codes);
}

TEST(Population, EveryKindCanBeSampledAndIsOfThatKind) {
  for (const std::string& kind : scenario_kinds()) {
    for (std::uint64_t seed = 1; seed <= 30; ++seed) {
      const Scenario scenario = sample_scenario(kind, seed);
      EXPECT_EQ(scenario.kind, kind);
      EXPECT_GE(scenario.pixels_per_mm, 8.0) << kind;
      EXPECT_LE(scenario.pixels_per_mm, 48.0) << kind;
      const long pixels = static_cast<long>(scenario.width_px) * scenario.height_px;
      EXPECT_LT(pixels, 12'000'000L) << kind << ' ' << seed;
    }
  }
}

struct Promise {
  const char* kind;
  const char* fitness;
  const char* zero_visible;
};

class Promised : public testing::TestWithParam<Promise> {};

TEST_P(Promised, FitnessAndZero) {
  for (const std::uint64_t seed : {2U, 3U}) {
    const Simulated s = scan(GetParam().kind, seed);
    EXPECT_EQ(s.truth.expected_fitness, GetParam().fitness) << s.truth.reason;
    EXPECT_EQ(s.truth.zero_visible, GetParam().zero_visible);
    EXPECT_EQ(s.truth.reason.empty(), s.truth.expected_fitness == "fit");
  }
}

INSTANTIATE_TEST_SUITE_P(Kinds, Promised,
                         testing::Values(Promise{"tiny", "fit", "holes"},
                                         Promise{"cut-frame", "fit", "holes"},
                                         Promise{"flatbed-135-holder", "fit", "holes"},
                                         Promise{"medium-120", "fit", "gap"},
                                         Promise{"unfit-inverted", "unfit", "holes"},
                                         Promise{"unfit-stretched", "unfit", "holes"},
                                         Promise{"unfit-no-film", "unfit", "gap"},
                                         Promise{"unfit-positive", "unfit", "gap"},
                                         Promise{"unfit-hidden", "unfit", "none"}),
                         [](const auto& test) {
                           std::string name = test.param.kind;
                           for (char& letter : name) letter = letter == '-' ? '_' : letter;
                           return name;
                         });

TEST(Population, MaskedHoldersHideTheZeroMoreOftenThanNot) {
  int hidden = 0;
  for (std::uint64_t seed = 1; seed <= 6; ++seed) {
    const Simulated s = scan("holder-masked", seed);
    EXPECT_TRUE(s.truth.strips[0].holes_px.empty());
    hidden += s.truth.zero_visible == "none" ? 1 : 0;
    const char* expected = s.truth.zero_visible == "none" ? "relative" : "fit";
    EXPECT_EQ(s.truth.expected_fitness, expected);
  }
  EXPECT_GE(hidden, 3);
}

TEST(Population, ClippedZeroClips) {
  for (std::uint64_t seed = 1; seed <= 4; ++seed) {
    EXPECT_GT(scan("clipped-zero", seed).truth.zero_clipped_share, 0.02);
  }
}

TEST(Population, FlatbedScansShowRealisticNegatives) {
  // Net shadows and highlights of normal negatives lie about 0.2 to 0.4 and 1.05 to 1.35; a
  // population with errors of exposure and development spreads about that.
  double shadow = 0.0;
  double highlight = 0.0;
  int frames = 0;
  for (std::uint64_t seed = 1; seed <= 25; ++seed) {
    const Simulated s = scan("tiny", seed);
    for (const FrameTruth& frame : s.truth.frames) {
      if (!frame.shadow) continue;
      shadow += *frame.shadow - s.truth.strips[0].base_fog.visual;
      highlight += *frame.highlight - s.truth.strips[0].base_fog.visual;
      ++frames;
    }
  }
  EXPECT_GT(frames, 30);
  EXPECT_GT(shadow / frames, 0.05);
  EXPECT_LT(shadow / frames, 0.40);
  EXPECT_GT(highlight / frames, 0.70);
  EXPECT_LT(highlight / frames, 1.40);
}

}  // namespace
}  // namespace filmsim
