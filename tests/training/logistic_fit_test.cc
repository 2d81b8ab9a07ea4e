#include "logistic_fit.h"

#include "base/seeded_noise.h"

#include <cmath>

#include <gtest/gtest.h>

namespace training {
namespace {

std::vector<Example> drawn_examples(const LogisticFit& truth, int count) {
  fogline::SeededNoise random(11);
  std::vector<Example> examples;
  for (int i = 0; i < count; ++i) {
    const std::vector<double> signs{random.normal(1.0), 3.0 + random.normal(0.1)};
    const double chance = 1.0 / (1.0 + std::exp(-truth.log_odds(signs)));
    examples.push_back({signs, random.uniform() < chance});
  }
  return examples;
}

// The estimate's standard deviation is that of the information: about 0.04 for the first weight,
// 0.4 for the second, whose sign varies by a tenth.
TEST(LogisticFit, FindsTheWeightsThatExamplesWereDrawnWith) {
  const LogisticFit truth{-14.0, {1.5, 5.0}};
  const LogisticFit fit = fit_logistic(drawn_examples(truth, 8000));
  EXPECT_NEAR(fit.weights[0], 1.5, 0.15);
  EXPECT_NEAR(fit.weights[1], 5.0, 1.2);
  EXPECT_NEAR(fit.log_odds({0.0, 3.0}), truth.log_odds({0.0, 3.0}), 0.12);
}

// At the greatest likelihood as many are right as the probabilities add up to, but for the prior.
TEST(LogisticFit, ProbabilitiesAddUpToWhatIsRight) {
  const std::vector<Example> examples = drawn_examples({-14.0, {1.5, 5.0}}, 500);
  const LogisticFit fit = fit_logistic(examples);
  double expected = 0.0;
  double right = 0.0;
  for (const Example& example : examples) {
    expected += 1.0 / (1.0 + std::exp(-fit.log_odds(example.signs)));
    right += example.right ? 1.0 : 0.0;
  }
  EXPECT_NEAR(expected, right, 0.1);
}

TEST(LogisticFit, ExamplesThatPartCleanlyHaveFiniteWeights) {
  const LogisticFit fit =
      fit_logistic({{{0.0}, false}, {{1.0}, false}, {{2.0}, true}, {{3.0}, true}});
  EXPECT_GT(fit.weights[0], 1.0);
  EXPECT_LT(fit.weights[0], 50.0);
  EXPECT_LT(fit.log_odds({1.0}), 0.0);
  EXPECT_GT(fit.log_odds({2.0}), 0.0);
}

}  // namespace
}  // namespace training
