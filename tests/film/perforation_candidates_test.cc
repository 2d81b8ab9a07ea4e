#include "film/strips/perforation_candidates.h"

#include "film/drawn_finding.h"

#include <algorithm>
#include <cmath>

#include <gtest/gtest.h>

namespace fogline {
namespace {

constexpr int width = 300;
constexpr int height = 200;
constexpr float film = 0.3F;
constexpr float bare = 0.0F;
const RegionPx hole{100, 60, 14, 20};

TEST(BrightSpots, TellPlaceSizeAndLight) {
  FindingImage image = drawn::even_finding(width, height, film);
  drawn::paint(image, hole, 0.01F);
  const std::vector<BrightSpot> spots = bright_spots(image);
  ASSERT_EQ(spots.size(), 1U);
  EXPECT_EQ(spots[0].x, 107.0);
  EXPECT_EQ(spots[0].y, 70.0);
  EXPECT_EQ(spots[0].width, 14.0);
  EXPECT_EQ(spots[0].height, 20.0);
  EXPECT_NEAR(spots[0].level, 0.01, 1e-6);
  EXPECT_FALSE(spots[0].at_border);
}

TEST(BrightSpots, AreNoneInEvenOrEmptyPictures) {
  for (const float level : {0.0F, 0.3F, 2.0F}) {
    EXPECT_TRUE(bright_spots(drawn::even_finding(width, height, level)).empty());
    EXPECT_TRUE(bright_spots(drawn::even_finding(1, 1, level)).empty());
  }
}

// From film hardly darker than the lamp to a dense base.
TEST(BrightSpots, ShowOnAnyBase) {
  for (const float base : {0.03F, 0.08F, 0.3F, 0.6F, 1.2F}) {
    FindingImage image = drawn::even_finding(width, height, base);
    drawn::paint(image, hole, bare);
    EXPECT_EQ(bright_spots(image).size(), 1U) << base;
  }
}

// Two thirds of the light are lost from left to right: no one level parts all holes from the film.
TEST(BrightSpots, ShowWhereTheLampFallsOff) {
  FindingImage image = drawn::even_finding(width, height, film);
  for (int k = 0; k < 7; ++k) {
    drawn::paint(image, {20 + 38 * k, 60, 14, 20}, bare);
  }
  for (int y = 0; y < height; ++y) {
    for (int x = 0; x < width; ++x) {
      image.log_light(y, x) += 0.5F * static_cast<float>(x) / width;
    }
  }
  EXPECT_EQ(bright_spots(image).size(), 7U);
}

// Five pixels wide is a shape, three is dust; a quarter of the picture is no hole, nor is a line,
// nor an angle.
TEST(BrightSpots, HaveTheShapeOfAHole) {
  const auto count = [](const std::vector<RegionPx>& boxes) {
    FindingImage image = drawn::even_finding(width, height, film);
    for (const RegionPx& box : boxes) {
      drawn::paint(image, box, bare);
    }
    return bright_spots(image).size();
  };
  EXPECT_EQ(count({{50, 50, 5, 7}}), 1U);
  EXPECT_EQ(count({{50, 50, 3, 4}}), 0U);
  EXPECT_EQ(count({{50, 50, 90, 60}}), 0U);
  EXPECT_EQ(count({{50, 50, 10, 40}}), 0U);
  EXPECT_EQ(count({{50, 50, 10, 25}}), 1U);
  EXPECT_EQ(count({{50, 50, 30, 6}, {50, 50, 6, 30}}), 0U);
}

TEST(BrightSpots, TellThoseThatTheBorderCuts) {
  for (const RegionPx& cut : {RegionPx{-6, 60, 14, 20}, RegionPx{292, 60, 14, 20},
                              RegionPx{100, -8, 14, 20}, RegionPx{100, 190, 14, 20}}) {
    FindingImage image = drawn::even_finding(width, height, film);
    drawn::paint(image, cut, bare);
    const std::vector<BrightSpot> spots = bright_spots(image);
    ASSERT_EQ(spots.size(), 1U);
    EXPECT_TRUE(spots[0].at_border);
  }
}

TEST(BrightSpots, MirroredAndTurnedPicturesGiveMirroredAndTurnedSpots) {
  FindingImage image = drawn::even_finding(width, height, film);
  drawn::paint(image, hole, bare);
  drawn::paint(image, {200, 120, 10, 15}, bare);
  for (const drawn::Turn turn :
       {drawn::Turn::left_right, drawn::Turn::upside_down, drawn::Turn::quarter}) {
    const std::vector<BrightSpot> spots = bright_spots(drawn::turned(image, turn));
    ASSERT_EQ(spots.size(), 2U);
    for (const PointPx drawn_at : {PointPx{107.0, 70.0}, PointPx{205.0, 127.5}}) {
      const PointPx at = drawn::turned(drawn_at, turn, width, height);
      EXPECT_TRUE(std::any_of(spots.begin(), spots.end(), [&](const BrightSpot& spot) {
        return spot.x == at.x && spot.y == at.y;
      }));
    }
  }
}

// A lens spreads bright light: round each hole film reads clearer, fading outward over half a
// hole's width. The outline stays at the hole's edge.
TEST(BrightSpots, DontRunIntoALensesHalo) {
  for (const float halo : {0.1F, 0.2F, 0.28F}) {
    FindingImage image = drawn::even_finding(width, height, film);
    constexpr int reach = 10;
    for (int ring = reach; ring > 0; --ring) {
      const float fading = 1.0F - static_cast<float>(ring) / reach;
      drawn::paint(image, {100 - ring, 60 - ring, 14 + 2 * ring, 20 + 2 * ring},
                   film - halo * fading);
    }
    drawn::paint(image, hole, bare);
    const std::vector<BrightSpot> spots = bright_spots(image);
    // The halo may show as a spot of its own; the hole must show too.
    EXPECT_TRUE(std::any_of(spots.begin(), spots.end(), [](const BrightSpot& spot) {
      return std::abs(spot.width - 14.0) <= 2.0 && std::abs(spot.height - 20.0) <= 2.0;
    })) << halo;
  }
}

// Grain a third of the step from film to bare light makes no spots and moves none by a pixel.
TEST(BrightSpots, GrainMakesNone) {
  for (const std::uint32_t seed : {1U, 2U, 3U}) {
    FindingImage image = drawn::even_finding(width, height, film);
    drawn::paint(image, hole, bare);
    SeededNoise noise(seed);
    for (float& value : image.log_light) {
      value += static_cast<float>(noise.normal(0.03));
    }
    const std::vector<BrightSpot> spots = bright_spots(image);
    ASSERT_EQ(spots.size(), 1U);
    EXPECT_NEAR(spots[0].x, 107.0, 1.0);
    EXPECT_NEAR(spots[0].y, 70.0, 1.0);
  }
}

}  // namespace
}  // namespace fogline
