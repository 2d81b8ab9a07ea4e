#include "film/wedges/wedge_row.h"

#include "film/drawn_log_wedge.h"
#include "film/wedges/find_wedges.h"

#include <algorithm>

#include <gtest/gtest.h>

namespace fogline {
namespace {

constexpr int width = 800;
constexpr int height = 400;

/// Chain of the wedge's steps from `first` to `last` alone.
PatchChain seen(const drawn::Wedge& wedge, int first, int last) {
  PatchChain chain = drawn::chain_of(wedge);
  chain.patches = {chain.patches.begin() + first, chain.patches.begin() + last + 1};
  return chain;
}

/// Steps lie on the drawn ones from `first` to `last`, at whole pitches.
void expect_row(const WedgeRow& row, const drawn::Wedge& wedge, int first, int last) {
  ASSERT_EQ(static_cast<int>(row.places.size()), last - first + 1);
  EXPECT_NEAR(row.pitch, wedge.pitch_px, 0.01);
  for (int i = first; i <= last; ++i) {
    const auto k = static_cast<std::size_t>(i - first);
    EXPECT_EQ(row.slots[k], i - first);
    const PointPx drawn_at = drawn::step_middle(wedge, i);
    EXPECT_NEAR(row.at(row.places[k], 0.0).x, drawn_at.x, 0.1) << i;
    EXPECT_NEAR(row.at(row.places[k], 0.0).y, drawn_at.y, 0.1) << i;
  }
}

TEST(LayRow, LiesOnTheWedgeTowardsItsDarkEnd) {
  for (const double direction : {0.0, 180.0, 3.0, -3.0, 90.0, -90.0, 87.0}) {
    drawn::Wedge wedge;
    wedge.steps = 13;
    wedge.direction_deg = direction;
    const WedgeRow row = lay_row(seen(wedge, 0, 12), drawn::log_wedge(wedge, width, height));
    SCOPED_TRACE(direction);
    expect_row(row, wedge, 0, 12);
    const double turn = direction * std::numbers::pi / 180.0;
    EXPECT_NEAR(row.along.x, std::cos(turn), 1e-6);
    EXPECT_NEAR(row.along.y, std::sin(turn), 1e-6);
    // Across is square to it.
    EXPECT_NEAR(row.along.x * row.across.x + row.along.y * row.across.y, 0.0, 1e-9);
    EXPECT_NEAR(row.length, wedge.pitch_px, 1e-6);
    EXPECT_NEAR(row.size, wedge.size_px, 1e-6);
    EXPECT_TRUE(row.touching);
  }
}

// Steps too alike, dirty or taped to be seen as patches are filled in, within the row and beyond
// its ends, up to where the wedge ends.
TEST(LayRow, FillsStepsThatWerentSeen) {
  const drawn::Wedge wedge;
  const cv::Mat1f smooth = drawn::log_wedge(wedge, width, height);
  expect_row(lay_row(seen(wedge, 4, 15), smooth), wedge, 0, 20);
  PatchChain gappy = seen(wedge, 0, 20);
  gappy.patches.erase(gappy.patches.begin() + 7, gappy.patches.begin() + 9);
  expect_row(lay_row(gappy, smooth), wedge, 0, 20);
}

// Bare light before the first step and after the last one is no step, nor is an opaque mask.
TEST(LayRow, EndsWhereTheWedgeEnds) {
  for (const double surround : {0.0, 4.0}) {
    drawn::Wedge wedge;
    wedge.steps = 9;
    wedge.surround_density = surround;
    SCOPED_TRACE(surround);
    expect_row(lay_row(seen(wedge, 2, 7), drawn::log_wedge(wedge, width, height)), wedge, 0, 8);
  }
}

// No wedge has more than 41 steps, however far even places go on.
TEST(LayRow, HasAtMostTheStepsAWedgeMayHave) {
  drawn::Wedge wedge;
  wedge.steps = 60;
  wedge.pitch_px = 12.0;
  wedge.step_density = 0.05;
  const WedgeRow row = lay_row(seen(wedge, 5, 30), drawn::log_wedge(wedge, width, height));
  EXPECT_EQ(static_cast<int>(row.places.size()), most_wedge_steps);
}

TEST(LayRow, JointsAndGapsDontTouch) {
  for (const drawn::Between between : {drawn::Between::clear_gap, drawn::Between::dark_joint}) {
    drawn::Wedge wedge;
    wedge.steps = 9;
    wedge.pitch_px = 40.0;
    wedge.between = between;
    wedge.joint_px = 10.0;
    const WedgeRow row = lay_row(seen(wedge, 0, 8), drawn::log_wedge(wedge, width, height));
    EXPECT_FALSE(row.touching);
    EXPECT_FALSE(row.unseen_dark_steps.has_value());
    expect_row(row, wedge, 0, 8);
  }
}

// Strips laid loosely side by side have no pitch: they are numbered as they come.
TEST(LayRow, LooseStripsHaveNoPitch) {
  drawn::Wedge loose;
  loose.steps = 6;
  loose.pitch_px = 80.0;
  loose.between = drawn::Between::clear_gap;
  loose.joint_px = 40.0;
  loose.shifts_px = {0.0, 14.0, -20.0, 24.0, -18.0, 16.0};
  const WedgeRow row = lay_row(seen(loose, 0, 5), drawn::log_wedge(loose, width, height));
  EXPECT_EQ(row.pitch, 0.0);
  EXPECT_EQ(row.slots, (std::vector<int>{0, 1, 2, 3, 4, 5}));
  for (int i = 0; i < 6; ++i) {
    EXPECT_NEAR(row.at(row.places[static_cast<std::size_t>(i)], 0.0).x,
                drawn::step_middle(loose, i).x, 0.1);
  }
}

// A scanner that sees no further than density 2: of 21 steps of 0.15 above 0.05 the last seven read
// alike, and bare light beyond tells how many they are.
TEST(LayRow, CountsDarkStepsThatReadAlike) {
  const drawn::Wedge wedge;
  const WedgeRow row = lay_row(seen(wedge, 0, 13), drawn::log_wedge(wedge, width, height, 2.0));
  expect_row(row, wedge, 0, 13);
  ASSERT_TRUE(row.unseen_dark_steps.has_value());
  EXPECT_EQ(*row.unseen_dark_steps, 7);
  // All seen: none is left.
  const WedgeRow all = lay_row(seen(wedge, 0, 20), drawn::log_wedge(wedge, width, height));
  ASSERT_TRUE(all.unseen_dark_steps.has_value());
  EXPECT_EQ(*all.unseen_dark_steps, 0);
}

// In an opaque mask nothing shows where the film ends.
TEST(LayRow, AMaskHidesHowManyDarkStepsThereAre) {
  drawn::Wedge wedge;
  wedge.surround_density = 4.0;
  const WedgeRow row = lay_row(seen(wedge, 0, 13), drawn::log_wedge(wedge, width, height, 2.0));
  EXPECT_FALSE(row.unseen_dark_steps.has_value());
}

}  // namespace
}  // namespace fogline
