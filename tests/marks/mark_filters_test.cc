#include "base/seeded_noise.h"
#include "marks/local_scale.h"
#include "marks/neighbourhood.h"
#include "marks/ridge.h"
#include "marks/ring_path.h"

#include <cmath>
#include <numbers>

#include <gtest/gtest.h>

namespace fogline {
namespace {

cv::Mat1f noise(int columns, int rows, double sd, std::uint32_t seed) {
  SeededNoise random(seed);
  cv::Mat1f image(rows, columns);
  for (float& value : image) {
    value = static_cast<float>(random.normal(sd));
  }
  return image;
}

cv::Mat1b all_of(const cv::Mat1f& image) {
  return {image.size(), static_cast<unsigned char>(255)};
}

TEST(LocalScale, IsTheStandardDeviationOfNoise) {
  const cv::Mat1f image = noise(400, 300, 0.05, 1);
  for (const double share : {0.5, 0.96}) {
    const cv::Mat1f scale = local_scale(image, all_of(image), 100, share);
    EXPECT_NEAR(scale(150, 200), 0.05F, 0.004F) << share;
  }
}

// A mark that fills a fiftieth of the square doesn't raise what is usual there; picture edges over
// a tenth of it do.
TEST(LocalScale, StandsOneMarkAndRisesInTexture) {
  cv::Mat1f image = noise(100, 100, 0.02, 2);
  image(cv::Rect(40, 40, 14, 14)).setTo(1.0F);
  EXPECT_LT(local_scale(image, all_of(image), 100, 0.96)(50, 50), 0.03F);
  image(cv::Rect(10, 10, 10, 80)).setTo(1.0F);
  EXPECT_GT(local_scale(image, all_of(image), 100, 0.96)(50, 50), 0.3F);
}

TEST(LocalScale, NothingAnswersFarFromFilm) {
  const cv::Mat1f image = noise(100, 100, 0.02, 3);
  const cv::Mat1b none(image.size(), static_cast<unsigned char>(0));
  EXPECT_GT(local_scale(image, none, 50, 0.96)(50, 50), 100.0F);
}

TEST(Ridge, CrestRunsAlongTheLineAndAcrossIsSquareToIt) {
  cv::Mat1f image(60, 60, 0.5F);
  for (int x = 0; x < 60; ++x) {
    image(30, x) = 0.9F;
  }
  const Ridge ridge = ridge_crests(image, 2.0, 1, all_of(image));
  EXPECT_GT(ridge.height(30, 30), 0.1F);
  EXPECT_NEAR(std::abs(std::sin(ridge.across(30, 30))), 1.0F, 0.01F);
  EXPECT_EQ(ridge.height(27, 30), 0.0F);
  EXPECT_EQ(ridge_crests(image, 2.0, -1, all_of(image)).height(30, 30), 0.0F);
}

TEST(Ridge, StepIsNoLine) {
  cv::Mat1f image(60, 60, 0.5F);
  image(cv::Rect(30, 0, 30, 60)).setTo(1.0F);
  const Ridge ridge = ridge_crests(image, 2.0, 1, all_of(image));
  double highest = 0.0;
  cv::minMaxLoc(ridge.height, nullptr, &highest);
  EXPECT_LT(highest, 0.02);
}

LineEvidence circle_evidence(double radius_px) {
  constexpr int size = 100;
  LineEvidence evidence{cv::Mat1f(size, size, 0.0F), cv::Mat1f(size, size, 0.0F),
                        cv::Mat1f(size, size, 0.0F)};
  for (int y = 0; y < size; ++y) {
    for (int x = 0; x < size; ++x) {
      const double dx = x + 0.5 - 50.0;
      const double dy = y + 0.5 - 50.0;
      if (std::abs(std::hypot(dx, dy) - radius_px) < 1.0) {
        const double angle = 2.0 * std::atan2(dy, dx);
        evidence.strength(y, x) = 1.0F;
        evidence.cosine(y, x) = static_cast<float>(std::cos(angle));
        evidence.sine(y, x) = static_cast<float>(std::sin(angle));
      }
    }
  }
  return evidence;
}

TEST(RingPath, FollowsACircleFromBesideItsMiddle) {
  const auto path = best_ring(circle_evidence(25.0), {53.0, 48.0}, 8.0, 45.0, 0.0);
  ASSERT_TRUE(path.has_value());
  EXPECT_GT(path->sum, 0.8 * ring_directions);
  for (int d = 0; d < ring_directions; ++d) {
    const cv::Point2d at = path->point(d);
    EXPECT_NEAR(std::hypot(at.x - 50.0, at.y - 50.0), 25.0, 2.0) << d;
  }
}

// Lines that point at the middle are no rim.
TEST(RingPath, LinesMustRunRound) {
  LineEvidence spokes = circle_evidence(25.0);
  spokes.cosine *= -1.0;
  spokes.sine *= -1.0;
  const auto path = best_ring(spokes, {50.0, 50.0}, 8.0, 45.0, 0.0);
  ASSERT_TRUE(path.has_value());
  EXPECT_LT(path->sum, 0.1 * ring_directions);
}

TEST(Neighbourhood, SpeckOfSkyLiesInThePicturesRange) {
  const DensityRange range{0.3, 1.2};
  EXPECT_LE(beyond_range(range, 1.2, 0.8), 0.0);
  EXPECT_NEAR(beyond_range(range, 2.2, 1.0), 1.0, 1e-12);
  EXPECT_NEAR(beyond_range(range, 0.1, -0.4), 0.5, 1e-12);
}

TEST(Neighbourhood, OnlyGapsAndRebateAreSurelyUnexposed) {
  FilmStrip film;
  film.format = FilmFormat::f135;
  film.frames = {{0.0, 36.0, -12.0, 12.0}, {38.0, 74.0, -12.0, 12.0}};
  EXPECT_TRUE(in_picture(film, {10.0, 0.0}));
  EXPECT_FALSE(in_picture(film, {37.0, 0.0}));
  EXPECT_FALSE(in_picture(film, {10.0, 16.0}));
  // Beyond the last frame there may be one that wasn't found.
  EXPECT_TRUE(in_picture(film, {80.0, 0.0}));
}

}  // namespace
}  // namespace fogline
