#include "marks/ring_path.h"

#include <cmath>
#include <functional>
#include <numbers>

#include <gtest/gtest.h>

namespace fogline {
namespace {

constexpr int size_px = 100;
constexpr double middle_px = 50.0;

/// Adds a line one to two pixels broad: `off` says how far a place lies off it, in pixels, from the
/// image's middle; the angle across the line is that in which `off` grows.
void add_line(LineEvidence& evidence, const std::function<double(double, double)>& off,
              float strength = 1.0F) {
  for (int y = 0; y < size_px; ++y) {
    for (int x = 0; x < size_px; ++x) {
      const double dx = x + 0.5 - middle_px;
      const double dy = y + 0.5 - middle_px;
      if (std::abs(off(dx, dy)) >= 1.0) {
        continue;
      }
      constexpr double h = 0.01;
      const double angle =
          2.0 * std::atan2(off(dx, dy + h) - off(dx, dy - h), off(dx + h, dy) - off(dx - h, dy));
      evidence.strength(y, x) = strength;
      evidence.cosine(y, x) = strength * static_cast<float>(std::cos(angle));
      evidence.sine(y, x) = strength * static_cast<float>(std::sin(angle));
    }
  }
}

LineEvidence no_evidence() {
  const cv::Mat1f none(size_px, size_px, 0.0F);
  return {none.clone(), none.clone(), none.clone()};
}

LineEvidence line(const std::function<double(double, double)>& off) {
  LineEvidence evidence = no_evidence();
  add_line(evidence, off);
  return evidence;
}

std::function<double(double, double)> circle(double radius_px) {
  return [=](double dx, double dy) { return std::hypot(dx, dy) - radius_px; };
}

/// Off an ellipse, near it, in pixels.
double off_ellipse(double dx, double dy) {
  constexpr double a = 32.0;
  constexpr double b = 22.0;
  const double level = std::hypot(dx / a, dy / b);
  return (level - 1.0) * level / std::hypot(dx / a / a, dy / b / b);
}

TEST(RingPath, PointsLieAtTheirRadiusRoundTheMiddle) {
  RingPath path;
  path.middle = {10.0, 20.0};
  path.radius.fill(5.0);
  EXPECT_NEAR(path.point(0).x, 15.0, 1e-12);
  EXPECT_NEAR(path.point(0).y, 20.0, 1e-12);
  EXPECT_NEAR(path.point(ring_directions / 4).x, 10.0, 1e-12);
  EXPECT_NEAR(path.point(ring_directions / 4).y, 25.0, 1e-12);
}

TEST(RingPath, LineIsSeenFromAcrossIt) {
  // Across along x: double angle 0.
  LineEvidence evidence = no_evidence();
  evidence.strength(5, 5) = 2.0F;
  evidence.cosine(5, 5) = 2.0F;
  EXPECT_FLOAT_EQ(evidence.toward(5, 5, 1.0F, 0.0F), 2.0F);
  EXPECT_FLOAT_EQ(evidence.toward(5, 5, -1.0F, 0.0F), 0.0F);
  EXPECT_FLOAT_EQ(evidence.toward(5, 5, 0.0F, 1.0F), 1.0F);
}

TEST(RingPath, FollowsACircleFromBesideItsMiddle) {
  const auto path = best_ring(line(circle(25.0)), {53.0, 48.0}, 8.0, 45.0, 0.0);
  ASSERT_TRUE(path.has_value());
  EXPECT_GT(path->sum, 0.8 * ring_directions);
  for (int d = 0; d < ring_directions; ++d) {
    const cv::Point2d at = path->point(d);
    EXPECT_NEAR(std::hypot(at.x - middle_px, at.y - middle_px), 25.0, 2.0) << d;
  }
}

TEST(RingPath, FollowsAnEllipse) {
  const auto path = best_ring(line(off_ellipse), {middle_px, middle_px}, 8.0, 45.0, 0.0);
  ASSERT_TRUE(path.has_value());
  EXPECT_GT(path->sum, 0.8 * ring_directions);
  for (int d = 0; d < ring_directions; ++d) {
    const cv::Point2d at = path->point(d);
    EXPECT_NEAR(off_ellipse(at.x - middle_px, at.y - middle_px), 0.0, 2.0) << d;
  }
}

// Lines that point at the middle are no rim.
TEST(RingPath, LinesMustRunRound) {
  LineEvidence spokes = line(circle(25.0));
  spokes.cosine *= -1.0;
  spokes.sine *= -1.0;
  const auto path = best_ring(spokes, {middle_px, middle_px}, 8.0, 45.0, 0.0);
  ASSERT_TRUE(path.has_value());
  EXPECT_LT(path->sum, 0.1 * ring_directions);
}

// One turn of a spiral gathers as much as a circle, but its ends don't meet.
TEST(RingPath, SpiralDoesntClose) {
  const auto spiral = line([](double dx, double dy) {
    const double turn = std::atan2(dy, dx) / (2.0 * std::numbers::pi) + 0.5;
    return std::hypot(dx, dy) - 14.0 - 26.0 * turn;
  });
  EXPECT_FALSE(
      best_ring(spiral, {middle_px, middle_px}, 8.0, 45.0, 0.8 * ring_directions).has_value());
}

TEST(RingPath, TooLittleEvidenceIsNone) {
  const LineEvidence evidence = line(circle(25.0));
  const auto path = best_ring(evidence, {middle_px, middle_px}, 8.0, 45.0, 0.0);
  ASSERT_TRUE(path.has_value());
  EXPECT_LE(path->sum, ring_directions);
  EXPECT_TRUE(best_ring(evidence, {middle_px, middle_px}, 8.0, 45.0, path->sum - 0.01).has_value());
  EXPECT_FALSE(
      best_ring(evidence, {middle_px, middle_px}, 8.0, 45.0, path->sum + 0.01).has_value());
}

TEST(RingPath, StrongerOfTwoRimsIsTaken) {
  for (const double strong : {15.0, 35.0}) {
    LineEvidence both = line(circle(50.0 - strong));
    add_line(both, circle(strong), 2.0F);
    const auto path = best_ring(both, {middle_px, middle_px}, 8.0, 45.0, 0.0);
    ASSERT_TRUE(path.has_value());
    for (const double radius : path->radius) {
      EXPECT_NEAR(radius, strong, 2.0);
    }
  }
}

// A rim that runs out of the film is followed as far as it is in sight.
TEST(RingPath, RimMayLeaveTheImage) {
  const LineEvidence whole = line(circle(25.0));
  const cv::Rect right(40, 0, size_px - 40, size_px);
  const LineEvidence cut{whole.strength(right).clone(), whole.cosine(right).clone(),
                         whole.sine(right).clone()};
  const auto path = best_ring(cut, {middle_px - 40.0, middle_px}, 8.0, 45.0, 0.0);
  ASSERT_TRUE(path.has_value());
  EXPECT_GT(path->sum, 0.5 * ring_directions);
  EXPECT_LT(path->sum, 0.75 * ring_directions);
  for (const int d : {0, ring_directions / 8, 7 * ring_directions / 8}) {
    EXPECT_NEAR(path->radius[static_cast<std::size_t>(d)], 25.0, 2.0) << d;
  }
}

TEST(RingPath, KeepsToTheRadiiAskedForAndHasNoJump) {
  const auto path = best_ring(line(off_ellipse), {52.0, 47.0}, 20.0, 30.0, 0.0);
  ASSERT_TRUE(path.has_value());
  for (std::size_t d = 0; d < path->radius.size(); ++d) {
    EXPECT_GE(path->radius[d], 20.0);
    EXPECT_LE(path->radius[d], 30.0);
    const double next = path->radius[(d + 1) % path->radius.size()];
    // Where it closes it may be one step more.
    EXPECT_LE(std::abs(next - path->radius[d]), d + 1 < path->radius.size() ? 1.0 : 3.0) << d;
  }
}

TEST(RingPath, FewerThanThreeRadiiAreNoChoice) {
  EXPECT_FALSE(best_ring(line(circle(25.0)), {middle_px, middle_px}, 24.5, 25.5, 0.0).has_value());
}

}  // namespace
}  // namespace fogline
