#include "sensitometry/estimate_contrast.h"

#include "base/within_doubt.h"

#include <gtest/gtest.h>

namespace fogline {
namespace {

std::vector<Quantity> ranges(std::vector<double> values, double u95, std::size_t bounds = 0) {
  std::vector<Quantity> result;
  for (const double value : values) {
    Quantity quantity{value, u95, {}, {}, {}, false};
    quantity.at_least = result.size() < bounds;
    result.push_back(quantity);
  }
  return result;
}

TEST(EstimateContrast, NeedsTwoFrames) {
  for (const auto& few : {ranges({}, 0.05), ranges({0.8}, 0.05)}) {
    const ContrastEstimate estimate = estimate_contrast(few);
    EXPECT_EQ(estimate.method, ContrastMethod::none);
    EXPECT_FALSE(estimate.contrast_index.has_value());
    EXPECT_FALSE(estimate.density_range.has_value());
    EXPECT_EQ(estimate.contrast_index.why().kind, Unknown::few_frames_for_contrast);
    EXPECT_EQ(estimate.density_range.why().kind, Unknown::few_frames_for_range);
  }
}

TEST(EstimateContrast, ScalesWithTheMedianRange) {
  const ContrastEstimate one = estimate_contrast(ranges({0.4, 0.7, 1.5}, 0.05));
  const ContrastEstimate twice = estimate_contrast(ranges({0.8, 1.4, 3.0}, 0.10));
  ASSERT_TRUE(one.contrast_index && twice.contrast_index && one.density_range);
  EXPECT_EQ(one.method, ContrastMethod::scene_estimate);
  EXPECT_DOUBLE_EQ(one.density_range->value, 0.7);
  EXPECT_NEAR(twice.contrast_index->value / one.contrast_index->value, 2.0, 1e-12);
  EXPECT_NEAR(twice.contrast_index->u95 / one.contrast_index->u95, 2.0, 1e-12);
}

// Ranges about the 0.80 to which ISO 6 develops its triangle (from memory) must come out near the
// contrast index of 0.56 to 0.60 at which the navy's training manual aims (NAVEDTRA 14208, public
// domain).
TEST(EstimateContrast, OfAUsualRollIsUsual) {
  const ContrastEstimate estimate = estimate_contrast(ranges({0.75, 0.80, 0.85, 0.78}, 0.06));
  ASSERT_TRUE(estimate.contrast_index.has_value());
  test::expect_within_doubt(*estimate.contrast_index, 0.58, 0.35);
}

TEST(EstimateContrast, DoubtGrowsWithThatOfTheRanges) {
  const ContrastEstimate sure = estimate_contrast(ranges({0.7, 0.8, 0.9}, 0.02));
  const ContrastEstimate unsure = estimate_contrast(ranges({0.7, 0.8, 0.9}, 0.30));
  EXPECT_GT(unsure.contrast_index->u95, sure.contrast_index->u95);
  // Few frames may all be of one flat subject.
  const ContrastEstimate few = estimate_contrast(ranges({0.7, 0.9}, 0.02));
  EXPECT_GT(few.contrast_index->u95, sure.contrast_index->u95);
}

// Frames of one roll share their weather: however many, a good third stays in doubt.
TEST(EstimateContrast, DoubtDoesNotVanishWithManyFrames) {
  const ContrastEstimate many = estimate_contrast(ranges(std::vector<double>(36, 0.8), 0.0));
  ASSERT_TRUE(many.contrast_index.has_value());
  EXPECT_GT(many.contrast_index->u95, 0.35 * many.contrast_index->value);
}

TEST(EstimateContrast, IsSilentWhereRangesAreOnlyBounds) {
  const ContrastEstimate estimate = estimate_contrast(ranges({1.6, 1.7, 1.8}, 0.1, 2));
  EXPECT_FALSE(estimate.contrast_index.has_value());
  EXPECT_EQ(estimate.contrast_index.why().kind, Unknown::frames_too_dense);
  ASSERT_TRUE(estimate.density_range.has_value());
  EXPECT_TRUE(estimate.density_range->at_least);
  EXPECT_TRUE(estimate_contrast(ranges({1.6, 1.7, 1.8}, 0.1, 1)).contrast_index.has_value());
}

}  // namespace
}  // namespace fogline
