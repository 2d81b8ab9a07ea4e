#include "film/wedges/wedge_chains.h"

#include "base/seeded_noise.h"
#include "film/drawn_log_wedge.h"

#include <algorithm>

#include <gtest/gtest.h>

namespace fogline {
namespace {

constexpr std::size_t fewest = 4;

std::vector<EvenPatch> patches_of(const drawn::Wedge& wedge) {
  return drawn::chain_of(wedge).patches;
}

void add(std::vector<EvenPatch>& patches, const std::vector<EvenPatch>& more) {
  patches.insert(patches.end(), more.begin(), more.end());
}

bool rises(const PatchChain& chain) {
  return std::is_sorted(chain.patches.begin(), chain.patches.end(),
                        [](const EvenPatch& a, const EvenPatch& b) { return a.level < b.level; });
}

TEST(PatchChains, LightestFirstWhicheverWayTheyRun) {
  for (const double direction : {0.0, 180.0, 90.0, -90.0, 4.0, -4.0, 176.0, 86.0}) {
    drawn::Wedge wedge;
    wedge.direction_deg = direction;
    std::vector<EvenPatch> patches = patches_of(wedge);
    // The order in which they were found doesn't matter.
    std::rotate(patches.begin(), patches.begin() + 8, patches.end());
    std::swap(patches[3], patches[15]);
    const std::vector<PatchChain> chains = patch_chains(patches, fewest);
    SCOPED_TRACE(direction);
    ASSERT_EQ(chains.size(), 1U);
    EXPECT_EQ(chains[0].patches.size(), 21U);
    EXPECT_TRUE(rises(chains[0]));
    EXPECT_EQ(chains[0].vertical, std::abs(std::abs(direction) - 90.0) < 10.0);
  }
}

TEST(PatchChains, NeedTheFewestPatches) {
  EXPECT_TRUE(patch_chains({}, fewest).empty());
  drawn::Wedge wedge;
  wedge.steps = 6;
  EXPECT_EQ(patch_chains(patches_of(wedge), 6).size(), 1U);
  EXPECT_TRUE(patch_chains(patches_of(wedge), 7).empty());
}

// Turned by more than five degrees it is another row, or none.
TEST(PatchChains, LieNearAnAxis) {
  drawn::Wedge wedge;
  wedge.size_px = 20.0;
  wedge.pitch_px = 40.0;
  wedge.direction_deg = 30.0;
  EXPECT_TRUE(patch_chains(patches_of(wedge), fewest).empty());
}

// Half a density from end to end is a wedge, a fifth is an uneven glass; steps of more than 1.2 are
// none.
TEST(PatchChains, SpanARangeInStepsThatRise) {
  const auto count = [](int steps, double step_density) {
    drawn::Wedge wedge;
    wedge.steps = steps;
    wedge.step_density = step_density;
    return patch_chains(patches_of(wedge), fewest).size();
  };
  EXPECT_EQ(count(6, 0.1), 1U);
  EXPECT_EQ(count(6, 0.04), 0U);
  EXPECT_EQ(count(6, 1.3), 0U);
  EXPECT_EQ(count(6, 0.0), 0U);
}

// A step twice as wide across as its neighbours breaks the row in two; it doesn't join it.
TEST(PatchChains, AreOfOneSizeAcross) {
  drawn::Wedge wedge;
  std::vector<EvenPatch> patches = patches_of(wedge);
  for (EvenPatch& patch : patches) {
    patch.height *= &patch - patches.data() < 10 ? 1.0 : 2.0;
  }
  const std::vector<PatchChain> chains = patch_chains(patches, fewest);
  ASSERT_EQ(chains.size(), 2U);
  EXPECT_EQ(chains[0].patches.size(), 11U);
  EXPECT_EQ(chains[1].patches.size(), 10U);
}

// One step that wasn't seen leaves one row, half a wedge apart are two.
TEST(PatchChains, BridgeAMissingStep) {
  const drawn::Wedge wedge;
  std::vector<EvenPatch> patches = patches_of(wedge);
  patches.erase(patches.begin() + 9);
  const std::vector<PatchChain> bridged = patch_chains(patches, fewest);
  ASSERT_EQ(bridged.size(), 1U);
  EXPECT_EQ(bridged[0].patches.size(), 20U);
  patches.erase(patches.begin() + 8, patches.begin() + 13);
  const std::vector<PatchChain> parted = patch_chains(patches, fewest);
  ASSERT_EQ(parted.size(), 2U);
  EXPECT_EQ(parted[0].patches.size() + parted[1].patches.size(), patches.size());
}

TEST(PatchChains, LongestFirstAndNoPatchTwice) {
  drawn::Wedge shorter;
  shorter.steps = 8;
  drawn::Wedge longer;
  longer.middle.y += 100.0;
  drawn::Wedge upright;
  upright.steps = 12;
  upright.direction_deg = -90.0;
  upright.middle = {1000.0, 300.0};
  std::vector<EvenPatch> patches = patches_of(shorter);
  add(patches, patches_of(longer));
  add(patches, patches_of(upright));
  const std::vector<PatchChain> chains = patch_chains(patches, fewest);
  ASSERT_EQ(chains.size(), 3U);
  EXPECT_EQ(chains[0].patches.size(), 21U);
  EXPECT_EQ(chains[1].patches.size(), 12U);
  EXPECT_TRUE(chains[1].vertical);
  EXPECT_EQ(chains[2].patches.size(), 8U);
  for (const PatchChain& chain : chains) {
    EXPECT_TRUE(rises(chain));
  }
}

// Even places strewn at random, as a picture has them, are no row.
TEST(PatchChains, ChanceMakesNone) {
  for (std::uint32_t seed = 1; seed <= 20; ++seed) {
    SeededNoise noise(seed);
    std::vector<EvenPatch> patches;
    for (int i = 0; i < 15; ++i) {
      patches.push_back({{noise.uniform(0.0, 800.0), noise.uniform(0.0, 600.0)},
                         noise.uniform(10.0, 60.0),
                         noise.uniform(10.0, 60.0),
                         noise.uniform(0.0, 2.0)});
    }
    EXPECT_TRUE(patch_chains(patches, fewest).empty()) << seed;
  }
}

}  // namespace
}  // namespace fogline
