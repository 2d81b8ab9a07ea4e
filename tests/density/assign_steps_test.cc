#include "density/assign_steps.h"

#include <vector>

#include <gtest/gtest.h>

namespace fogline {
namespace {

WedgeReference reference(int steps) {
  WedgeReference made;
  for (int i = 0; i < steps; ++i) {
    made.steps.push_back({std::to_string(i + 1), 0.05 + 0.15 * i, {}});
  }
  return made;
}

/// Steps `first` to `last` of the same wedge as a scanner with its own slope reads them.
std::vector<SeenStep> seen(int first, int last, double slope) {
  std::vector<SeenStep> steps;
  for (int i = first; i <= last; ++i) {
    steps.push_back({i - first, slope * (0.05 + 0.15 * i), false});
  }
  return steps;
}

TEST(AssignSteps, AWholeWedgeNeedsNoBareLight) {
  const StepAssignment all = assign_steps(seen(0, 20, 1.3), reference(21), {false, false});
  ASSERT_FALSE(all.failure);
  EXPECT_EQ(all.reference_index.front(), 0);
  EXPECT_EQ(all.reference_index.back(), 20);
}

TEST(AssignSteps, BareLightTellsWhichStepsAreMissing) {
  for (const double slope : {0.6, 1.0, 1.4}) {
    for (const int first : {0, 1, 3}) {
      const StepAssignment some =
          assign_steps(seen(first, first + 11, slope), reference(21), {true, false});
      ASSERT_FALSE(some.failure) << slope << ' ' << first;
      EXPECT_EQ(some.reference_index.front(), first);
    }
  }
}

TEST(AssignSteps, AGapInTheRowStaysAGap) {
  std::vector<SeenStep> steps = seen(0, 20, 1.0);
  steps.erase(steps.begin() + 7);
  const StepAssignment some = assign_steps(steps, reference(21), {false, false});
  ASSERT_FALSE(some.failure);
  EXPECT_EQ(some.reference_index[6], 6);
  EXPECT_EQ(some.reference_index[7], 8);
}

TEST(AssignSteps, ADirtyStepAmongTheFirstDoesNotMoveThePlace) {
  std::vector<SeenStep> steps = seen(1, 14, 1.2);
  steps[2].density += 0.12;
  const StepAssignment some = assign_steps(steps, reference(21), {true, false});
  ASSERT_FALSE(some.failure);
  EXPECT_EQ(some.reference_index.front(), 1);
}

TEST(AssignSteps, TheDarkEndCountsWhereBareLightIsClipped) {
  // Steps 2 to 18 of 21 are seen, and two fit between the last and the end of the film.
  const StepAssignment some = assign_steps(seen(1, 18, 1.0), reference(21), {false, false, 2});
  ASSERT_FALSE(some.failure);
  EXPECT_TRUE(some.counted_from_dark_end);
  EXPECT_EQ(some.reference_index.front(), 1);
  // Too many would be hidden in the light: this is no wedge of 21 steps.
  EXPECT_TRUE(assign_steps(seen(5, 18, 1.0), reference(21), {false, false, 2}).failure);
  EXPECT_FALSE(
      assign_steps(seen(1, 18, 1.0), reference(21), {true, false, 2}).counted_from_dark_end);
}

TEST(AssignSteps, RefusesWhatItCannotTell) {
  EXPECT_EQ(assign_steps(seen(0, 20, 1.0), reference(20), {true, false}).failure,
            (Fact<Refusal>{Refusal::more_steps_than_reference, {21.0, 20.0}, {}, {}}));
  EXPECT_EQ(assign_steps(seen(0, 11, 1.0), reference(21), {false, false}).failure,
            (Fact<Refusal>{Refusal::steps_without_bare_light, {12.0, 21.0}, {}, {}}));
  // Halfway between two places.
  std::vector<SeenStep> between = seen(0, 11, 1.0);
  for (SeenStep& step : between) {
    step.density += 0.075;
  }
  EXPECT_EQ(assign_steps(between, reference(21), {true, false}).failure,
            (Fact<Refusal>{Refusal::steps_untold_by_bare_light, {12.0, 21.0}, {}, {}}));
}

TEST(AssignSteps, AReferenceThatGoesOnBeyondTheFilmIsAnotherWedges) {
  // 20 steps and the end of the film, laid on 41 of a third of their pitch.
  WedgeReference fine;
  for (int i = 0; i < 41; ++i) {
    fine.steps.push_back({std::to_string(i + 1), 0.05 + 0.05 * i, {}});
  }
  EXPECT_EQ(assign_steps(seen(0, 19, 1.0), fine, {true, false, 0}).failure,
            (Fact<Refusal>{Refusal::wedge_ends_early, {20.0, 41.0, 20.0}, {}, {}}));
  EXPECT_FALSE(assign_steps(seen(0, 19, 1.0), reference(21), {true, false, 1}).failure);
  EXPECT_FALSE(assign_steps(seen(0, 19, 1.0), reference(21), {true, false, 0}).failure);
}

TEST(AssignSteps, ClippedStepsTellNothingOfTheSlope) {
  std::vector<SeenStep> steps = seen(0, 11, 1.0);
  steps[0].density = 0.0;
  steps[0].clipped = true;
  const StepAssignment some = assign_steps(steps, reference(21), {true, false});
  ASSERT_FALSE(some.failure);
  EXPECT_EQ(some.reference_index.front(), 0);
}

// Two places fit the bare light alike: the lightest step that lies unclipped beside it is the
// first.
TEST(AssignSteps, TheLightEndInSightIsTheFirstStep) {
  std::vector<SeenStep> steps = seen(0, 16, 1.0);
  // The scanner's curve bends near the light: half a step's density stands between.
  for (SeenStep& step : steps) {
    step.density += 0.075;
  }
  EXPECT_TRUE(assign_steps(steps, reference(21), {true, false}).failure);
  const StepAssignment read = assign_steps(steps, reference(21), {true, true});
  ASSERT_FALSE(read.failure);
  EXPECT_EQ(read.reference_index.front(), 0);
  EXPECT_EQ(read.reference_index.back(), 16);
  EXPECT_TRUE(read.counted_from_light_end);
  // Bare light at the top code still shows where the wedge begins.
  EXPECT_EQ(assign_steps(steps, reference(21), {false, true}).reference_index.front(), 0);
  steps.front().clipped = true;
  EXPECT_TRUE(assign_steps(steps, reference(21), {false, true}).failure);
  // The bare light speaks for another place.
  const StepAssignment later = assign_steps(seen(2, 16, 1.0), reference(21), {true, true});
  ASSERT_FALSE(later.failure);
  EXPECT_EQ(later.reference_index.front(), 2);
  EXPECT_FALSE(later.counted_from_light_end);
}

TEST(AssignSteps, WhatIsToldGoesFirst) {
  WedgeReference told = reference(21);
  told.first_in_sight = 4;
  const StepAssignment read = assign_steps(seen(0, 11, 1.0), told, {true, true});
  ASSERT_FALSE(read.failure);
  EXPECT_EQ(read.reference_index.front(), 3);
  EXPECT_FALSE(read.counted_from_light_end);
  told.first_in_sight = 12;
  EXPECT_EQ(assign_steps(seen(0, 11, 1.0), told, {true, true}).failure->kind,
            Refusal::more_steps_than_reference);
}

}  // namespace
}  // namespace fogline
