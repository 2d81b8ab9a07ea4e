#include "ring_draws.h"
#include "tables/calibration_text.h"
#include "tables/shipped_knowledge.h"

#include <filesystem>
#include <fstream>
#include <iterator>

#include <gtest/gtest.h>
#include <unistd.h>

namespace training {
namespace {

std::vector<DrawnRing> stored_rings() {
  std::ifstream file(FOGLINE_TRAINING_DIR "/rings.csv");
  return rings_from({std::istreambuf_iterator<char>(file), {}});
}

TEST(RingScore, ShippedWeightsAreWhatTheFitGives) {
  const std::vector<DrawnRing> rings = stored_rings();
  ASSERT_GT(rings.size(), 300U);
  const fogline::RingScore score = fit_ring_score(rings);
  EXPECT_EQ(score, fogline::shipped_knowledge().scan.marks.ring.score);
  EXPECT_NE(fogline::calibration_text("marks.toml").find(toml_of(score, rings)),
            std::string_view::npos);
}

// The stored examples are those of the first seeds, drawn anew: the same lines, with the same signs
// but for what another compiler's arithmetic leaves.
TEST(RingScore, StoredExamplesAreWhatTheSimulatorGives) {
  constexpr int seeds = 2;
  const std::filesystem::path folder =
      std::filesystem::temp_directory_path() / ("ring-score-" + std::to_string(getpid()));
  std::filesystem::create_directories(folder);
  const std::vector<DrawnRing> drawn = draw_rings(first_ring_seed, seeds, 2, folder);
  std::filesystem::remove_all(folder);
  ASSERT_FALSE(drawn.empty());
  const std::vector<DrawnRing> stored = stored_rings();
  ASSERT_GT(stored.size(), drawn.size());
  EXPECT_GE(stored[drawn.size()].seed, first_ring_seed + seeds);
  for (std::size_t i = 0; i < drawn.size(); ++i) {
    const fogline::RingSigns& now = drawn[i].example.signs;
    const fogline::RingSigns& then = stored[i].example.signs;
    EXPECT_EQ(drawn[i].seed, stored[i].seed);
    EXPECT_EQ(drawn[i].example.right, stored[i].example.right);
    EXPECT_NEAR(now.seen, then.seen, 0.02);
    EXPECT_NEAR(now.spread, then.spread, 0.02);
    EXPECT_NEAR(now.alone, then.alone, 0.005);
    EXPECT_NEAR(now.mean_radius_mm, then.mean_radius_mm, 0.05);
    EXPECT_NEAR(now.mean_evidence, then.mean_evidence, 0.02);
    EXPECT_EQ(now.twins, then.twins);
  }
}

TEST(RingScore, TextOfExamplesReadsBack) {
  const std::vector<DrawnRing> rings = stored_rings();
  EXPECT_EQ(text_of(rings_from(text_of(rings))), text_of(rings));
  EXPECT_THROW(rings_from("heading\n1,fine,yes\n"), std::runtime_error);
}

}  // namespace
}  // namespace training
