#include "numerics/gaussian_process.h"

#include "numerics/normal_draws.h"

#include <array>
#include <cmath>

#include <gtest/gtest.h>

namespace fogline {
namespace {

// Rasmussen & Williams 2006, equations 2.23 and 2.24 for one point: mean k(x, x1) / k(x1, x1) y.
TEST(StrayingFunction, FollowsOnePointByTheKernel) {
  const StrayKernel kernel{0.5, 2.0};
  const std::array points{1.0};
  const std::array error{0.0};
  const std::array nodes{1.0, 3.0, 20.0};
  const StrayingFunction function(kernel, points, error, nodes);
  const std::array seen{0.4};
  const std::vector<double> mean = function.mean_at_nodes(seen);
  EXPECT_NEAR(mean[0], 0.4, 1e-5);
  EXPECT_NEAR(mean[1], 0.4 * std::exp(-0.5), 1e-5);
  EXPECT_NEAR(mean[2], 0.0, 1e-9);
}

TEST(StrayingFunction, AnErrorOfThePointsHoldsItBack) {
  const StrayKernel kernel{0.5, 2.0};
  const std::array points{1.0};
  const std::array error{0.5};
  const std::array nodes{1.0};
  const std::array seen{0.4};
  EXPECT_NEAR(StrayingFunction(kernel, points, error, nodes).mean_at_nodes(seen)[0], 0.2, 1e-5);
}

TEST(StrayingFunction, DrawsScatterWhereNothingIsSeen) {
  const StrayKernel kernel{0.5, 1.0};
  const std::array points{0.0};
  const std::array error{0.0};
  const std::array nodes{0.0, 10.0};
  const StrayingFunction function(kernel, points, error, nodes);
  SeededNormals random(5);
  const std::array seen{0.0};
  double near = 0.0;
  double far = 0.0;
  constexpr int draws = 4000;
  for (int i = 0; i < draws; ++i) {
    const std::vector<double> drawn = function.draw_at_nodes(seen, random.next(nodes.size()));
    near += drawn[0] * drawn[0];
    far += drawn[1] * drawn[1];
  }
  EXPECT_LT(std::sqrt(near / draws), 0.002);
  EXPECT_NEAR(std::sqrt(far / draws), 0.5, 0.02);
}

// JCGM 102, 6.4.8: mean and covariance of the draws are those asked for.
TEST(NormalDraws, HaveTheirMeanAndCovariance) {
  const std::array covariance{0.04, 0.018, 0.018, 0.09};
  const NormalDraws draws({1.0, -2.0}, covariance);
  SeededNormals random(9);
  constexpr int count = 40000;
  std::array<double, 2> sum{};
  std::array<double, 3> products{};
  for (int i = 0; i < count; ++i) {
    const std::vector<double> drawn = draws.draw(random);
    sum[0] += drawn[0];
    sum[1] += drawn[1];
    products[0] += (drawn[0] - 1.0) * (drawn[0] - 1.0);
    products[1] += (drawn[0] - 1.0) * (drawn[1] + 2.0);
    products[2] += (drawn[1] + 2.0) * (drawn[1] + 2.0);
  }
  EXPECT_NEAR(sum[0] / count, 1.0, 0.005);
  EXPECT_NEAR(sum[1] / count, -2.0, 0.007);
  EXPECT_NEAR(products[0] / count, 0.04, 0.002);
  EXPECT_NEAR(products[1] / count, 0.018, 0.002);
  EXPECT_NEAR(products[2] / count, 0.09, 0.004);
}

}  // namespace
}  // namespace fogline
