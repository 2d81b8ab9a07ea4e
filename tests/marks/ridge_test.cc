#include "marks/ridge.h"

#include "marks/noise_image.h"

#include <cmath>
#include <numbers>

#include <gtest/gtest.h>

namespace fogline {
namespace {

constexpr int size_px = 61;
constexpr int middle_px = 30;
constexpr double ground = 0.5;
constexpr double contrast = 0.4;

/// A line with a bell-shaped profile through the middle of an image; the angle is that across it.
cv::Mat1f line_image(double across_rad, double sd_px) {
  cv::Mat1f image(size_px, size_px);
  for (int y = 0; y < size_px; ++y) {
    for (int x = 0; x < size_px; ++x) {
      const double off =
          (x - middle_px) * std::cos(across_rad) + (y - middle_px) * std::sin(across_rad);
      image(y, x) =
          static_cast<float>(ground + contrast * std::exp(-0.5 * off * off / sd_px / sd_px));
    }
  }
  return image;
}

/// A bar of three rows with sharp edges, on ground that may differ above and below.
cv::Mat1f bar_image(float above, float bar, float below) {
  cv::Mat1f image(size_px, size_px, above);
  image.rowRange(middle_px, size_px).setTo(below);
  image.rowRange(middle_px - 1, middle_px + 2).setTo(bar);
  return image;
}

double greatest(const cv::Mat1f& image) {
  double most = 0.0;
  cv::minMaxLoc(image, nullptr, &most);
  return most;
}

TEST(Ridge, CrestLiesOnTheLineWhereverItRuns) {
  for (int degrees = 0; degrees < 180; degrees += 15) {
    const double across = degrees * std::numbers::pi / 180.0;
    const cv::Mat1f image = line_image(across, 1.0);
    const Ridge ridge = ridge_crests(image, 2.5, 1, all_of(image));
    EXPECT_GT(ridge.height(middle_px, middle_px), 0.5F * contrast) << degrees;
    EXPECT_NEAR(std::sin(static_cast<double>(ridge.across(middle_px, middle_px)) - across), 0.0,
                0.05)
        << degrees;
    // Four pixels beside it there is none.
    const int beside_x = middle_px + static_cast<int>(std::lround(4.0 * std::cos(across)));
    const int beside_y = middle_px + static_cast<int>(std::lround(4.0 * std::sin(across)));
    EXPECT_EQ(ridge.height(beside_y, beside_x), 0.0F) << degrees;
  }
}

// A bar of three pixels under a Gaussian of 3 / sqrt(12) keeps this share of its height.
TEST(Ridge, HeightIsThatOfTheSmoothedBar) {
  const double kept = std::erf(1.5 / (3.0 / std::sqrt(12.0)) / std::numbers::sqrt2);
  const cv::Mat1f dense = bar_image(0.5F, 0.9F, 0.5F);
  EXPECT_NEAR(ridge_crests(dense, 3.0, 1, all_of(dense)).height(middle_px, middle_px), 0.4 * kept,
              0.01);
  const cv::Mat1f thin = bar_image(0.5F, 0.1F, 0.5F);
  EXPECT_NEAR(ridge_crests(thin, 3.0, -1, all_of(thin)).height(middle_px, middle_px), 0.4 * kept,
              0.01);
}

TEST(Ridge, HeightIsOverTheNearerOfTheTwoSides) {
  const double kept = std::erf(1.5 / (3.0 / std::sqrt(12.0)) / std::numbers::sqrt2);
  const cv::Mat1f image = bar_image(0.5F, 1.0F, 0.7F);
  const double crest = kept * 1.0 + (1.0 - kept) * 0.6;
  const Ridge ridge = ridge_crests(image, 3.0, 1, all_of(image));
  EXPECT_NEAR(ridge.height(middle_px, middle_px), crest - 0.7, 0.015);
}

TEST(Ridge, DenseAndThinLinesAreToldApart) {
  const cv::Mat1f dense = bar_image(0.5F, 0.9F, 0.5F);
  EXPECT_EQ(ridge_crests(dense, 3.0, -1, all_of(dense)).height(middle_px, middle_px), 0.0F);
  const cv::Mat1f turned_over(1.0 - dense);
  EXPECT_LT(most_apart(ridge_crests(turned_over, 3.0, -1, all_of(dense)).height,
                       ridge_crests(dense, 3.0, 1, all_of(dense)).height),
            1e-5);
}

TEST(Ridge, StepIsNoLine) {
  const cv::Mat1f image = bar_image(0.5F, 0.5F, 1.0F);
  EXPECT_LT(greatest(ridge_crests(image, 2.0, 1, all_of(image)).height), 0.02);
  EXPECT_LT(greatest(ridge_heights(image, 2.0, 1)), 0.02);
}

TEST(Ridge, RampIsNoLine) {
  cv::Mat1f image(size_px, size_px);
  for (int y = 0; y < size_px; ++y) {
    for (int x = 0; x < size_px; ++x) {
      image(y, x) = 0.01F * static_cast<float>(x) + 0.02F * static_cast<float>(y);
    }
  }
  const cv::Rect inner(5, 5, size_px - 10, size_px - 10);
  EXPECT_LT(greatest(ridge_crests(image, 2.5, 1, all_of(image)).height(inner)), 1e-3);
  EXPECT_LT(greatest(ridge_heights(image, 2.5, 1)(inner)), 1e-3);
}

TEST(Ridge, OnlyPlacesAskedAnswer) {
  const cv::Mat1f image = bar_image(0.5F, 0.9F, 0.5F);
  cv::Mat1b left = all_of(image);
  left.colRange(middle_px, size_px).setTo(0);
  const Ridge ridge = ridge_crests(image, 3.0, 1, left);
  EXPECT_GT(ridge.height(middle_px, middle_px - 1), 0.3F);
  EXPECT_EQ(greatest(ridge.height.colRange(middle_px, size_px)), 0.0);
}

TEST(Ridge, TwoLinesSixPixelsApartAreTwo) {
  cv::Mat1f image(size_px, size_px, 0.5F);
  image.row(middle_px).setTo(0.9F);
  image.row(middle_px + 6).setTo(0.9F);
  const Ridge ridge = ridge_crests(image, 2.0, 1, all_of(image));
  EXPECT_GT(ridge.height(middle_px, middle_px), 0.1F);
  EXPECT_EQ(ridge.height(middle_px + 3, middle_px), 0.0F);
  EXPECT_GT(ridge.height(middle_px + 6, middle_px), 0.1F);
}

// What is a threshold for crests must be measured in the crests' own heights, but for sides that
// lie whole pixels off.
TEST(Ridge, HeightsAgreeWithCrestsInFourDirections) {
  for (const int degrees : {0, 45, 90, 135}) {
    const cv::Mat1f image = line_image(degrees * std::numbers::pi / 180.0, 1.0);
    const float crest = ridge_crests(image, 2.5, 1, all_of(image)).height(middle_px, middle_px);
    EXPECT_NEAR(ridge_heights(image, 2.5, 1)(middle_px, middle_px), crest, 0.05F * contrast)
        << degrees;
  }
}

TEST(Ridge, TransposedImageGivesTransposedHeights) {
  const cv::Mat1f image = noise_image(80, 50, 0.1, 1);
  const cv::Mat1f transposed(image.t());
  EXPECT_LT(
      most_apart(ridge_heights(transposed, 2.5, 1), cv::Mat1f(ridge_heights(image, 2.5, 1).t())),
      1e-5);
  const cv::Mat1f crests = ridge_crests(image, 2.5, 1, all_of(image)).height;
  EXPECT_GT(greatest(crests), 0.1);
  EXPECT_LT(most_apart(ridge_crests(transposed, 2.5, 1, all_of(transposed)).height,
                       cv::Mat1f(crests.t())),
            1e-4);
}

}  // namespace
}  // namespace fogline
