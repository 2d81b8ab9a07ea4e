#include "film/drawn_wedge.h"
#include "film/wedges/find_wedges.h"

#include <array>

#include <gtest/gtest.h>

namespace fogline {
namespace {

/// Steps `first` to `last` of a drawn wedge, each read over its middle three fifths.
FoundWedge found(const drawn::Wedge& wedge, int first, int last) {
  const double turn = wedge.direction_deg * std::numbers::pi / 180.0;
  FoundWedge result;
  for (int i = first; i <= last; ++i) {
    const PointPx middle = drawn::step_middle(wedge, i);
    const double s = 0.3 * wedge.pitch_px;
    const double t = 0.3 * wedge.size_px;
    WedgeStep step;
    step.slot = i - first;
    std::size_t corner = 0;
    for (const auto& [a, b] :
         {std::pair{-s, -t}, std::pair{s, -t}, std::pair{s, t}, std::pair{-s, t}}) {
      step.corners_px[corner++] = {middle.x + a * std::cos(turn) - b * std::sin(turn),
                                   middle.y + a * std::sin(turn) + b * std::cos(turn)};
    }
    result.steps.push_back(step);
  }
  return result;
}

/// Whether a point lies on one side of all sides of a convex outline.
bool inside(const std::vector<PointPx>& outline, PointPx at) {
  int left = 0;
  for (std::size_t i = 0; i < outline.size(); ++i) {
    const PointPx a = outline[i];
    const PointPx b = outline[(i + 1) % outline.size()];
    left += (b.x - a.x) * (at.y - a.y) - (b.y - a.y) * (at.x - a.x) > 0.0 ? 1 : 0;
  }
  return left == 0 || left == static_cast<int>(outline.size());
}

/// A place of the wedge: so many pitches from the middle of a step along it, so many sizes across.
PointPx place(const drawn::Wedge& wedge, int step, double pitches, double sizes) {
  const double turn = wedge.direction_deg * std::numbers::pi / 180.0;
  const PointPx middle = drawn::step_middle(wedge, step);
  const double s = pitches * wedge.pitch_px;
  const double t = sizes * wedge.size_px;
  return {middle.x + s * std::cos(turn) - t * std::sin(turn),
          middle.y + s * std::sin(turn) + t * std::cos(turn)};
}

// All of the film that the steps lie on is within, and no more than a part of a step around it.
TEST(OutlineOf, HoldsTheWedgeAndLittleElse) {
  for (const double direction : {0.0, 180.0, 90.0, -90.0, 3.0, 177.0}) {
    drawn::Wedge wedge;
    wedge.direction_deg = direction;
    const std::vector<PointPx> outline = outline_of(found(wedge, 0, 20), 0, 0);
    SCOPED_TRACE(direction);
    ASSERT_EQ(outline.size(), 4U);
    for (const double side : {-0.49, 0.0, 0.49}) {
      EXPECT_TRUE(inside(outline, place(wedge, 0, -0.49, side)));
      EXPECT_TRUE(inside(outline, place(wedge, 10, 0.0, side)));
      EXPECT_TRUE(inside(outline, place(wedge, 20, 0.49, side)));
    }
    EXPECT_FALSE(inside(outline, place(wedge, 0, -1.0, 0.0)));
    EXPECT_FALSE(inside(outline, place(wedge, 20, 1.0, 0.0)));
    EXPECT_FALSE(inside(outline, place(wedge, 10, 0.0, 0.75)));
    EXPECT_FALSE(inside(outline, place(wedge, 10, 0.0, -0.75)));
  }
}

// Of 21 steps 4 to 15 were told apart: with the four before and the five after them the outline
// holds the whole wedge, and without them it doesn't.
TEST(OutlineOf, ReachesOverStepsThatWerentToldApart) {
  for (const double direction : {0.0, 180.0, 90.0}) {
    drawn::Wedge wedge;
    wedge.direction_deg = direction;
    const FoundWedge middle = found(wedge, 4, 15);
    const std::vector<PointPx> whole = outline_of(middle, 4, 5);
    const std::vector<PointPx> part = outline_of(middle, 0, 0);
    SCOPED_TRACE(direction);
    EXPECT_TRUE(inside(whole, place(wedge, 0, -0.49, 0.49)));
    EXPECT_TRUE(inside(whole, place(wedge, 20, 0.49, -0.49)));
    EXPECT_FALSE(inside(whole, place(wedge, 0, -1.0, 0.0)));
    EXPECT_FALSE(inside(whole, place(wedge, 20, 1.0, 0.0)));
    EXPECT_FALSE(inside(part, place(wedge, 2, 0.0, 0.0)));
    EXPECT_FALSE(inside(part, place(wedge, 17, 0.0, 0.0)));
  }
}

// A step missing within is counted by the slots, so that the pitch stays the wedge's.
TEST(OutlineOf, CountsBySlots) {
  const drawn::Wedge wedge;
  FoundWedge gappy = found(wedge, 0, 10);
  gappy.steps.erase(gappy.steps.begin() + 3, gappy.steps.begin() + 8);
  const std::vector<PointPx> all = outline_of(found(wedge, 0, 10), 1, 2);
  const std::vector<PointPx> some = outline_of(gappy, 1, 2);
  for (std::size_t i = 0; i < 4; ++i) {
    EXPECT_NEAR(some[i].x, all[i].x, 1e-6);
    EXPECT_NEAR(some[i].y, all[i].y, 1e-6);
  }
}

}  // namespace
}  // namespace fogline
