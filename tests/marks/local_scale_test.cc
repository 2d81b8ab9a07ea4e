#include "marks/local_scale.h"

#include "marks/noise_image.h"

#include <limits>

#include <gtest/gtest.h>

namespace fogline {
namespace {

constexpr double median = 0.5;
constexpr double high = 0.96;

TEST(LocalScale, IsTheStandardDeviationOfNoise) {
  const cv::Mat1f image = noise_image(400, 300, 0.05, 1);
  for (const double share : {median, high}) {
    const cv::Mat1f scale = local_scale(image, all_of(image), 100, share);
    EXPECT_NEAR(scale(150, 200), 0.05F, 0.004F) << share;
  }
}

// A mark that fills a fiftieth of the square doesn't raise what is usual there; picture edges over
// a tenth of it do.
TEST(LocalScale, StandsOneMarkAndRisesInTexture) {
  cv::Mat1f image = noise_image(100, 100, 0.02, 2);
  image(cv::Rect(40, 40, 14, 14)).setTo(1.0F);
  EXPECT_LT(local_scale(image, all_of(image), 100, high)(50, 50), 0.03F);
  image(cv::Rect(10, 10, 10, 80)).setTo(1.0F);
  EXPECT_GT(local_scale(image, all_of(image), 100, high)(50, 50), 0.3F);
}

TEST(LocalScale, MedianStandsAMarkOverTwoFifths) {
  cv::Mat1f image = noise_image(100, 100, 0.02, 3);
  image(cv::Rect(0, 0, 100, 40)).setTo(1.0F);
  EXPECT_LT(local_scale(image, all_of(image), 100, median)(50, 50), 0.06F);
  EXPECT_GT(local_scale(image, all_of(image), 100, high)(50, 50), 0.3F);
}

TEST(LocalScale, NothingAnswersFarFromFilm) {
  const cv::Mat1f image = noise_image(100, 100, 0.02, 4);
  const cv::Mat1b none(image.size(), static_cast<unsigned char>(0));
  EXPECT_GT(local_scale(image, none, 50, high)(50, 50), 100.0F);
}

/// Quiet film on the left, coarse film on the right, three squares in a row.
cv::Mat1f quiet_and_coarse() {
  cv::Mat1f image = noise_image(300, 100, 0.02, 5);
  image(cv::Rect(150, 0, 150, 100)) *= 4.0F;
  return image;
}

TEST(LocalScale, EachPlaceHasItsOwn) {
  const cv::Mat1f image = quiet_and_coarse();
  const cv::Mat1f scale = local_scale(image, all_of(image), 100, high);
  EXPECT_NEAR(scale(50, 50), 0.02F, 0.002F);
  EXPECT_NEAR(scale(50, 250), 0.08F, 0.008F);
  // Between two squares it changes over, without a step.
  EXPECT_GT(scale(50, 100), scale(50, 50));
  EXPECT_LT(scale(50, 100), scale(50, 250));
}

TEST(LocalScale, SquareWithoutFilmTakesItsNeighboursGreatest) {
  const cv::Mat1f image = quiet_and_coarse();
  cv::Mat1b usable = all_of(image);
  usable(cv::Rect(100, 0, 100, 100)).setTo(0);
  EXPECT_NEAR(local_scale(image, usable, 100, high)(50, 150), 0.08F, 0.008F);
}

TEST(LocalScale, WhatIsntUsableDoesntCount) {
  const cv::Mat1f image = noise_image(100, 100, 0.02, 6);
  cv::Mat1f holed = image.clone();
  cv::Mat1b usable = all_of(image);
  const cv::Rect hole(20, 20, 50, 50);
  usable(hole).setTo(0);
  const cv::Mat1f scale = local_scale(image, usable, 100, high);
  holed(hole).setTo(std::numeric_limits<float>::quiet_NaN());
  EXPECT_EQ(most_apart(local_scale(holed, usable, 100, high), scale), 0.0);
}

// Responses are divided by it.
TEST(LocalScale, EvenFilmHasALeastScale) {
  const cv::Mat1f even(50, 50, 0.0F);
  const float scale = local_scale(even, all_of(even), 50, high)(25, 25);
  EXPECT_GT(scale, 1e-4F);
  EXPECT_LT(scale, 1e-2F);
}

TEST(LocalScale, KnowsNoSignAndNoUnit) {
  const cv::Mat1f image = noise_image(120, 90, 0.03, 7);
  const cv::Mat1f scale = local_scale(image, all_of(image), 30, high);
  const cv::Mat1f turned_over(-image);
  EXPECT_EQ(most_apart(local_scale(turned_over, all_of(image), 30, high), scale), 0.0);
  const cv::Mat1f doubled(2.0 * image);
  EXPECT_LT(most_apart(local_scale(doubled, all_of(image), 30, high), cv::Mat1f(2.0 * scale)),
            1e-6);
}

TEST(LocalScale, IsAsLargeAsTheImage) {
  for (const cv::Size size : {cv::Size(17, 23), cv::Size(101, 57), cv::Size(300, 8)}) {
    const cv::Mat1f image = noise_image(size.width, size.height, 0.02, 8);
    for (const int block_px : {16, 50, 1000}) {
      const cv::Mat1f scale = local_scale(image, all_of(image), block_px, high);
      EXPECT_EQ(scale.size(), size);
      EXPECT_NEAR(cv::mean(scale)[0], 0.02, 0.008) << size << ' ' << block_px;
    }
  }
}

}  // namespace
}  // namespace fogline
