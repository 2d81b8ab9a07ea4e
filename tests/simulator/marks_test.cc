#include "simulator/marks.h"

#include "simulator/render.h"

#include <numbers>

#include <gtest/gtest.h>

namespace filmsim {
namespace {

MarkPlan of_kind(MarkKind kind) {
  MarkPlan mark;
  mark.kind = kind;
  mark.size_mm = kind == MarkKind::kScratch ? 8.0 : 2.0;
  mark.width_mm = 0.2;
  return mark;
}

class EachMark : public testing::TestWithParam<int> {};

TEST_P(EachMark, IsNothingBeyondItsReach) {
  const MarkPlan mark = of_kind(static_cast<MarkKind>(GetParam()));
  const double reach = mark_reach_mm(mark);
  for (double angle = 0.0; angle < 6.28; angle += 0.1) {
    const double du = 1.05 * reach * std::cos(angle);
    const double dv = 1.05 * reach * std::sin(angle);
    EXPECT_NEAR(mark_share(mark, du, dv, 0.05), 0.0F, 0.01F) << angle;
  }
}

TEST_P(EachMark, ReachesItsFullStrengthSomewhere) {
  const MarkPlan mark = of_kind(static_cast<MarkKind>(GetParam()));
  float most = 0.0F;
  for (double du = -2.0; du < 2.0; du += 0.05) {
    for (double dv = -2.0; dv < 2.0; dv += 0.05) {
      most = std::max(most, mark_share(mark, du, dv, 0.05));
    }
  }
  EXPECT_NEAR(most, 1.0F, 0.02F);
}

// Finer pixels see the same total: what a mark takes from the light doesn't depend on sampling.
TEST_P(EachMark, HasTheSameTotalAtAnyPixelSize) {
  const MarkPlan mark = of_kind(static_cast<MarkKind>(GetParam()));
  const auto total = [&](double pixel_mm) {
    double sum = 0.0;
    for (double du = -5.0 + 0.5 * pixel_mm; du < 5.0; du += pixel_mm) {
      for (double dv = -5.0 + 0.5 * pixel_mm; dv < 5.0; dv += pixel_mm) {
        sum += static_cast<double>(mark_share(mark, du, dv, pixel_mm)) * pixel_mm * pixel_mm;
      }
    }
    return sum;
  };
  EXPECT_NEAR(total(0.1) / total(0.02), 1.0, 0.06);
}

INSTANTIATE_TEST_SUITE_P(AllKinds, EachMark, testing::Range(0, kMarkKinds), [](const auto& test) {
  std::string name = mark_kind_name(static_cast<MarkKind>(test.param));
  for (char& letter : name) letter = letter == '-' ? '_' : letter;
  return name;
});

Scenario wall_with(const MarkPlan& mark) {
  Scenario scenario;
  scenario.width_px = 1000;
  scenario.height_px = 900;
  scenario.pixels_per_mm = 20.0;
  StripPlan strip;
  strip.geometry.length_mm = 42.0;
  strip.edge_print = false;
  FramePlan frame;
  frame.middle_u_mm = 21.0;
  frame.scene.kind = SceneKind::kEvenWall;
  frame.scene.falloff = 0.0;
  strip.frames = {frame};
  strip.marks = {mark};
  scenario.strips = {strip};
  return scenario;
}

TEST(DrawnMarks, BoxAreaAndContrastAreTheDiscs) {
  MarkPlan mark = of_kind(MarkKind::kAirBell);
  mark.middle_mm = {21.0, 17.0};
  mark.strength = 0.6;
  const Simulated simulated = render(wall_with(mark));
  ASSERT_EQ(simulated.truth.marks.size(), 1U);
  const DrawnMark& drawn = simulated.truth.marks[0];
  // The strip's middle lies in the picture's middle, film is 34.975 mm wide.
  EXPECT_NEAR(drawn.box_px.x + 0.5 * drawn.box_px.width, 500.0, 1.0);
  EXPECT_NEAR(drawn.box_px.y + 0.5 * drawn.box_px.height, 450.0 + 20.0 * (17.0 - 17.4875), 1.0);
  EXPECT_NEAR(drawn.box_px.width, 40.0, 3.0);
  EXPECT_NEAR(drawn.area_mm2, std::numbers::pi, 0.3);
  const FilmCurve curve(simulated.scenario.strips[0].stock.curve);
  const double net = curve.density(-2.0 + 1.2);
  EXPECT_NEAR(drawn.contrast_density, -0.6 * net, 0.06 * net);
}

TEST(DrawnMarks, ClearFilmHidesAnAirBell) {
  MarkPlan mark = of_kind(MarkKind::kAirBell);
  mark.middle_mm = {1.5, 17.0};  // in the rebate
  mark.strength = 0.6;
  const Simulated simulated = render(wall_with(mark));
  for (const DrawnMark& drawn : simulated.truth.marks) {
    EXPECT_NEAR(drawn.contrast_density, 0.0, 0.01);
  }
}

TEST(DrawnMarks, DontTouchTheFramesTruth) {
  MarkPlan mark = of_kind(MarkKind::kDust);
  mark.middle_mm = {21.0, 17.0};
  mark.size_mm = 6.0;
  const Simulated dusty = render(wall_with(mark));
  mark.middle_mm = {200.0, 17.0};  // off the film
  const Simulated clean = render(wall_with(mark));
  EXPECT_NEAR(*dusty.truth.frames[0].highlight, *clean.truth.frames[0].highlight, 0.002);
  EXPECT_NEAR(*dusty.truth.frames[0].middle, *clean.truth.frames[0].middle, 0.002);
}

TEST(DrawnMarks, ThreadsFinerThanAPixelAreTold) {
  MarkPlan mark = of_kind(MarkKind::kFibre);
  mark.middle_mm = {21.0, 17.0};
  mark.size_mm = 3.0;
  mark.width_mm = 0.012;  // a quarter of a pixel
  const Simulated simulated = render(wall_with(mark));
  ASSERT_EQ(simulated.truth.marks.size(), 1U);
  EXPECT_GT(std::max(simulated.truth.marks[0].box_px.width, simulated.truth.marks[0].box_px.height),
            20.0);
  EXPECT_GT(simulated.truth.marks[0].contrast_density, 0.03);
}

TEST(Surge, StreaksLieInsideTheHolesAndGrowWithSilver) {
  Scenario scenario = wall_with(of_kind(MarkKind::kDust));
  scenario.strips[0].marks.clear();
  scenario.strips[0].surge_density = 0.1;
  const Simulated simulated = render(scenario);
  // The frame is 36 mm long: 7 or 8 holes a row lie beside it, the rest beside clear film.
  EXPECT_GE(simulated.truth.marks.size(), 14U);
  EXPECT_LE(simulated.truth.marks.size(), 18U);
  for (const DrawnMark& mark : simulated.truth.marks) {
    EXPECT_EQ(mark.plan.kind, MarkKind::kSurge);
    EXPECT_GT(mark.contrast_density, 0.01);
    EXPECT_LT(mark.contrast_density, 0.1);
  }
}

}  // namespace
}  // namespace filmsim
