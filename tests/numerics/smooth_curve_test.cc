#include "numerics/smooth_curve.h"

#include <cmath>
#include <random>
#include <vector>

#include <gtest/gtest.h>

namespace fogline {
namespace {

std::vector<CurvePoint> points_on(double (*law)(double), int count, double doubt) {
  std::vector<CurvePoint> points;
  for (int i = 0; i < count; ++i) {
    const double x = 3.0 * i / (count - 1);
    points.push_back({x, law(x), doubt});
  }
  return points;
}

TEST(SmoothCurve, KeepsAStraightLineAndGoesOnBeyondIt) {
  const auto line = [](double x) { return 0.4 - 1.3 * x; };
  const SmoothCurve curve = fit_smooth_curve(points_on(line, 11, 0.01), {-0.2, 0.7, 3.4}, 0.0);
  for (std::size_t i = 0; i < curve.x.size(); ++i) {
    EXPECT_NEAR(curve.y[i], line(curve.x[i]), 1e-6);
  }
}

// The doubt of a difference along a straight line is sigma |x - x0| / sqrt(Sxx) (any textbook of
// linear regression; Draper & Smith, Applied Regression Analysis, section 1.4); a curve that may
// bend or scatter more can only be doubted more, and here not by half as much again.
TEST(SmoothCurve, DoubtOfALineIsAtLeastTheTextbooks) {
  const auto line = [](double x) { return 0.4 - 1.3 * x; };
  const std::vector<CurvePoint> points = points_on(line, 31, 0.01);
  double squares = 0.0;
  for (const CurvePoint& point : points) {
    squares += (point.x - 1.5) * (point.x - 1.5);
  }
  const SmoothCurve curve = fit_smooth_curve(points, {1.0, 2.0, 3.0}, 0.0);
  for (std::size_t i = 0; i < curve.x.size(); ++i) {
    const double textbook = 0.01 * curve.x[i] / std::sqrt(squares);
    EXPECT_GT(curve.doubt_from_reference[i], textbook);
  }
  EXPECT_LT(curve.doubt_from_reference[2], 3.0 * 0.01 * 3.0 / std::sqrt(squares));
}

TEST(SmoothCurve, FollowsABend) {
  const auto bent = [](double x) { return std::exp(-x); };
  const SmoothCurve curve =
      fit_smooth_curve(points_on(bent, 16, 0.0005), {0.11, 0.5, 1.37, 2.9}, 0.0);
  for (std::size_t i = 0; i < curve.x.size(); ++i) {
    EXPECT_NEAR(curve.y[i], bent(curve.x[i]), 0.002);
  }
}

TEST(SmoothCurve, DoubtCoversTheTruthForFewAndForManyPoints) {
  std::mt19937 random(5);
  std::normal_distribution<double> normal;
  for (const int count : {5, 9, 21}) {
    int covered = 0;
    int all = 0;
    for (int trial = 0; trial < 200; ++trial) {
      const double bend = 0.3 * normal(random);
      const double knee = 1.5 + 0.5 * normal(random);
      const auto law = [&](double x) { return -x + bend * std::tanh(x - knee); };
      std::vector<CurvePoint> points;
      for (int i = 0; i < count; ++i) {
        const double x = 3.0 * i / (count - 1);
        points.push_back({x, law(x) + 0.01 * normal(random), 0.01});
      }
      const SmoothCurve curve = fit_smooth_curve(points, {0.4, 1.2, 2.0, 2.8}, 0.0);
      for (std::size_t i = 0; i < curve.x.size(); ++i) {
        const SmoothCurve at_zero = fit_smooth_curve(points, {0.0}, 0.0);
        const double step = curve.y[i] - at_zero.y[0];
        covered +=
            std::abs(step - (law(curve.x[i]) - law(0.0))) <= 1.96 * curve.doubt_from_reference[i]
                ? 1
                : 0;
        ++all;
      }
    }
    EXPECT_GT(covered, 0.92 * all) << count;
  }
}

TEST(SmoothCurve, EvidencePrefersThePlaceWherePointsAreStraight) {
  const auto bent = [](double x) { return std::log10(std::pow(10.0, -x) + 0.01); };
  std::vector<CurvePoint> as_given = points_on(bent, 21, 0.002);
  std::vector<CurvePoint> straightened = as_given;
  for (std::size_t i = 0; i < as_given.size(); ++i) {
    straightened[i].x = bent(as_given[i].x);
    as_given[i].x = -as_given[i].x;
  }
  EXPECT_GT(fit_smooth_curve(straightened, {}, 0.0).log_evidence,
            fit_smooth_curve(as_given, {}, 0.0).log_evidence + 5.0);
}

TEST(SmoothCurve, ALeftOutPointStandsFarFromTheOthers) {
  std::mt19937 random(9);
  std::normal_distribution<double> normal;
  std::vector<CurvePoint> points;
  for (int i = 0; i < 15; ++i) {
    points.push_back({0.2 * i, -0.2 * i + 0.01 * normal(random), 0.01});
  }
  points[6].y += 0.12;
  const std::vector<double> residuals = left_out_residuals(points);
  for (std::size_t i = 0; i < residuals.size(); ++i) {
    if (i == 6) {
      EXPECT_GT(residuals[i], 6.0);
    } else {
      EXPECT_LT(std::abs(residuals[i]), 4.0);
    }
  }
}

}  // namespace
}  // namespace fogline
