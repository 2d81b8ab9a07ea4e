#include "film/wedges/wedge_patches.h"

#include "film/drawn_finding.h"

#include <algorithm>

#include <gtest/gtest.h>

namespace fogline {
namespace {

constexpr int width = 300;
constexpr int height = 200;

std::vector<EvenPatch> patches_of(const FindingImage& image) {
  const cv::Mat1f smooth = smoothed(image);
  return even_patches(smooth, unevenness(smooth));
}

void add_grain(FindingImage& image, double sd, std::uint32_t seed) {
  SeededNoise noise(seed);
  for (float& value : image.log_light) {
    value += static_cast<float>(noise.normal(sd));
  }
}

// Dust of two by two pixels is gone, an edge stays where it is.
TEST(Smoothed, TakesDustAndKeepsEdges) {
  FindingImage image = drawn::even_finding(width, height, 0.2F);
  drawn::paint(image, {150, 0, 150, height}, 1.0F);
  drawn::paint(image, {60, 60, 2, 2}, 2.0F);
  const cv::Mat1f smooth = smoothed(image);
  EXPECT_EQ(smooth(60, 60), 0.2F);
  EXPECT_EQ(smooth(100, 149), 0.2F);
  EXPECT_EQ(smooth(100, 150), 1.0F);
}

TEST(Unevenness, IsTheStepBesideAnEdgeAndNothingElsewhere) {
  FindingImage image = drawn::even_finding(width, height, 0.2F);
  drawn::paint(image, {150, 0, 150, height}, 0.7F);
  const cv::Mat1f uneven = unevenness(image.log_light);
  for (int x = 0; x < width; ++x) {
    EXPECT_NEAR(uneven(100, x), x == 149 || x == 150 ? 0.5F : 0.0F, 1e-6F) << x;
  }
}

// Pixel (x, y) covers [x, x + 1) × [y, y + 1): a box from 60 that is 40 wide has its middle at 80.
TEST(EvenPatches, TellMiddleSizeAndLevel) {
  FindingImage image = drawn::even_finding(width, height, 0.0F);
  drawn::paint(image, {60, 50, 40, 60}, 0.3F);
  drawn::paint(image, {100, 50, 40, 60}, 1.2F);
  const std::vector<EvenPatch> patches = patches_of(image);
  ASSERT_EQ(patches.size(), 2U);
  for (const EvenPatch& patch : patches) {
    const bool first = patch.middle.x < 100.0;
    // Smoothing rounds corners, of the lighter one those beside the darker one.
    EXPECT_NEAR(patch.middle.x, first ? 80.0 : 120.0, 0.1);
    EXPECT_NEAR(patch.middle.y, 80.0, 1e-6);
    EXPECT_NEAR(patch.level, first ? 0.3 : 1.2, 1e-6);
    // Smoothing and the edge itself cost up to two pixels a side.
    EXPECT_LE(patch.width, 40.0);
    EXPECT_GE(patch.width, 36.0);
    EXPECT_LE(patch.height, 60.0);
    EXPECT_GE(patch.height, 56.0);
  }
}

TEST(EvenPatches, AreNoneInEvenPictures) {
  EXPECT_TRUE(patches_of(drawn::even_finding(width, height, 0.0F)).empty());
  EXPECT_TRUE(patches_of(drawn::even_finding(1, 1, 0.5F)).empty());
}

// Too small, a quarter of the picture, or a slope without an even place.
TEST(EvenPatches, AreEvenAndOfSomeSize) {
  FindingImage image = drawn::even_finding(width, height, 0.0F);
  drawn::paint(image, {20, 20, 5, 5}, 0.5F);
  drawn::paint(image, {100, 20, 150, 150}, 0.5F);
  EXPECT_TRUE(patches_of(image).empty());
  FindingImage slope = drawn::even_finding(width, height, 0.0F);
  for (int x = 0; x < 100; ++x) {
    drawn::paint(slope, {100 + x, 60, 1, 80}, 0.5F + 0.3F * static_cast<float>(x));
  }
  EXPECT_TRUE(patches_of(slope).empty());
}

// A triangle fills half of its box.
TEST(EvenPatches, AreRectangles) {
  FindingImage image = drawn::even_finding(width, height, 0.0F);
  for (int y = 0; y < 80; ++y) {
    drawn::paint(image, {60, 60 + y, y + 1, 1}, 0.8F);
  }
  EXPECT_TRUE(patches_of(image).empty());
}

// Each patch once, though several thresholds see it; noise from clean light steps to grainy dark
// ones.
TEST(EvenPatches, ShowOnceThroughGrain) {
  for (const double grain : {0.002, 0.01, 0.04}) {
    for (const std::uint32_t seed : {1U, 2U, 3U}) {
      FindingImage image = drawn::even_finding(width, height, 0.0F);
      drawn::paint(image, {60, 50, 40, 60}, 1.0F);
      drawn::paint(image, {160, 50, 40, 60}, 2.0F);
      add_grain(image, grain, seed);
      std::vector<EvenPatch> patches = patches_of(image);
      // Grain may part other places; of these two there is one patch each.
      for (const double middle : {80.0, 180.0}) {
        const auto here = std::count_if(patches.begin(), patches.end(), [&](const EvenPatch& p) {
          return std::abs(p.middle.x - middle) < 2.0 && std::abs(p.middle.y - 80.0) < 2.0 &&
                 p.width > 34.0 && p.height > 54.0;
        });
        EXPECT_EQ(here, 1) << grain << ' ' << seed << ' ' << middle;
      }
    }
  }
}

}  // namespace
}  // namespace fogline
