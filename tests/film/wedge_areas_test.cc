#include "film/wedges/wedge_areas.h"

#include "film/drawn_log_wedge.h"
#include "film/drawn_scan.h"
#include "film/wedges/wedge_patches.h"

#include <algorithm>

#include <gtest/gtest.h>

namespace fogline {
namespace {

constexpr int width = 440;
constexpr int height = 400;

drawn::Wedge nine_steps(double direction_deg = 0.0) {
  drawn::Wedge wedge;
  wedge.steps = 9;
  wedge.pitch_px = 36.0;
  wedge.step_density = 0.25;
  wedge.direction_deg = direction_deg;
  wedge.middle = {220.0, 200.0};
  return wedge;
}

/// The row on which the wedge was drawn, in pixels of a picture that stands for `scan_px` stored
/// ones each.
WedgeRow row_of(const drawn::Wedge& wedge, double scan_px = 1.0) {
  const double turn = wedge.direction_deg * std::numbers::pi / 180.0;
  WedgeRow row;
  const PointPx first = drawn::step_middle(wedge, 0);
  row.origin = {first.x / scan_px, first.y / scan_px};
  row.along = {std::cos(turn), std::sin(turn)};
  row.across = {-std::sin(turn), std::cos(turn)};
  row.pitch = wedge.pitch_px / scan_px;
  row.length = row.pitch;
  row.size = wedge.size_px / scan_px;
  for (int i = 0; i < wedge.steps; ++i) {
    row.places.push_back(row.pitch * i);
    row.slots.push_back(i);
  }
  return row;
}

double light_of(const drawn::Wedge& wedge, int step) {
  return wedge.bare_light * (transmittance_from_density(wedge.density(step)) + wedge.floor);
}

TEST(ReadSteps, ReadTheLightOfEveryStep) {
  for (const double direction : {0.0, 180.0, 3.0, 90.0, -92.0}) {
    const drawn::Wedge wedge = nine_steps(direction);
    const std::vector<WedgeStep> steps =
        read_steps(drawn::grid_of(drawn::noisy_wedge(wedge, width, height)), row_of(wedge), 1.0);
    SCOPED_TRACE(direction);
    ASSERT_EQ(steps.size(), 9U);
    for (int i = 0; i < 9; ++i) {
      const WedgeStep& step = steps[static_cast<std::size_t>(i)];
      // Noise of 0.4 % over some 700 pixels, and codes of sixteen bits: well below a thousandth.
      EXPECT_NEAR(step.light[0] / light_of(wedge, i), 1.0, 0.002) << i;
      EXPECT_GT(step.light_doubt[0], 0.0);
      EXPECT_LT(step.light_doubt[0], 0.002 * step.light[0]);
      EXPECT_EQ(step.clipped_share[0], 0.0);
      EXPECT_EQ(step.slot, i);
    }
  }
}

// The middle three fifths of a step each way, clockwise from top left, however the wedge lies.
TEST(ReadSteps, TheAreaLiesWellInsideTheStep) {
  for (const double direction : {0.0, 180.0, 90.0, -90.0}) {
    const drawn::Wedge wedge = nine_steps(direction);
    const std::vector<WedgeStep> steps =
        read_steps(drawn::grid_of(drawn::wedge_light(wedge, width, height)), row_of(wedge), 1.0);
    const bool upright = std::abs(direction) == 90.0;
    const double half_x = 0.3 * (upright ? wedge.size_px : wedge.pitch_px);
    const double half_y = 0.3 * (upright ? wedge.pitch_px : wedge.size_px);
    for (int i = 0; i < 9; ++i) {
      const PointPx middle = drawn::step_middle(wedge, i);
      const auto& corners = steps[static_cast<std::size_t>(i)].corners_px;
      const std::array<PointPx, 4> wanted{{{middle.x - half_x, middle.y - half_y},
                                           {middle.x + half_x, middle.y - half_y},
                                           {middle.x + half_x, middle.y + half_y},
                                           {middle.x - half_x, middle.y + half_y}}};
      for (std::size_t c = 0; c < 4; ++c) {
        EXPECT_NEAR(corners[c].x, wanted[c].x, 1e-6) << direction << ' ' << i << ' ' << c;
        EXPECT_NEAR(corners[c].y, wanted[c].y, 1e-6) << direction << ' ' << i << ' ' << c;
      }
    }
  }
}

// The row is told in pixels of the finding image, the grid may be reduced: places are the same.
TEST(ReadSteps, PlacesAreStoredPixels) {
  drawn::Wedge wedge = nine_steps();
  ScanGrid grid = drawn::grid_of(drawn::wedge_light(wedge, width, height));
  grid.reduction = 3;
  // In stored pixels the wedge lies at three times its grid's places; the finding image has half of
  // the grid's pixels each way.
  const std::vector<WedgeStep> steps = read_steps(grid, row_of(wedge, 2.0), 6.0);
  for (int i = 0; i < 9; ++i) {
    const WedgeStep& step = steps[static_cast<std::size_t>(i)];
    EXPECT_NEAR(step.light[0] / light_of(wedge, i), 1.0, 0.001) << i;
    EXPECT_NEAR(middle_of(step.corners_px).x, 3.0 * drawn::step_middle(wedge, i).x, 1e-6);
  }
}

// Dust over a sixth of a step is hardly seen in its light, and seen in its doubt.
TEST(ReadSteps, DustHardlyMovesThem) {
  const drawn::Wedge wedge = nine_steps();
  Raster<float> light = drawn::noisy_wedge(wedge, width, height);
  const PointPx middle = drawn::step_middle(wedge, 4);
  for (int y = static_cast<int>(middle.y) - 18; y < static_cast<int>(middle.y) + 18; ++y) {
    for (int x = static_cast<int>(middle.x) - 10; x < static_cast<int>(middle.x) - 6; ++x) {
      light.at(x, y) *= 0.5F;
    }
  }
  const std::vector<WedgeStep> steps = read_steps(drawn::grid_of(light), row_of(wedge), 1.0);
  EXPECT_NEAR(steps[4].light[0] / light_of(wedge, 4), 1.0, 0.002);
}

// More noise, more doubt: in proportion, as the scatter of the area's parts tells it.
TEST(ReadSteps, DoubtGrowsWithNoise) {
  double quiet = 0.0;
  double loud = 0.0;
  for (const unsigned seed : {1U, 2U, 3U}) {
    drawn::Wedge wedge = nine_steps();
    wedge.seed = seed;
    const auto doubt = [&](double noise) {
      wedge.noise = noise;
      double sum = 0.0;
      for (const WedgeStep& step : read_steps(
               drawn::grid_of(drawn::noisy_wedge(wedge, width, height)), row_of(wedge), 1.0)) {
        sum += step.light_doubt[0] / step.light[0];
      }
      return sum / 9.0;
    };
    quiet += doubt(0.004);
    loud += doubt(0.04);
  }
  EXPECT_NEAR(loud / quiet, 10.0, 1.5);
}

// Bit c + 4 says that most of a grid pixel's stored ones are at the top code, bit c that some are.
TEST(ReadSteps, CountTheTopCode) {
  const drawn::Wedge wedge = nine_steps();
  ScanGrid grid = drawn::grid_of(drawn::wedge_light(wedge, width, height));
  const PointPx first = drawn::step_middle(wedge, 0);
  const PointPx second = drawn::step_middle(wedge, 1);
  for (int y = 0; y < height; ++y) {
    for (int x = 0; x < width; ++x) {
      if (std::abs(x + 0.5 - first.x) < 18.0) {
        // The upper half of the first step.
        grid.clipped.at(x, y) = y + 0.5 < first.y ? 0x11 : 0;
      } else if (std::abs(x + 0.5 - second.x) < 18.0) {
        grid.clipped.at(x, y) = 0x01;
      }
    }
  }
  const std::vector<WedgeStep> steps = read_steps(grid, row_of(wedge), 1.0);
  EXPECT_NEAR(steps[0].clipped_share[0], 0.5, 0.03);
  EXPECT_GT(steps[1].clipped_share[0], 0.0);
  EXPECT_LT(steps[1].clipped_share[0], 0.5);
  EXPECT_EQ(steps[2].clipped_share[0], 0.0);
}

TEST(ReadSteps, EachChannelIsReadByItself) {
  const drawn::Wedge wedge = nine_steps();
  ScanGrid grid = drawn::grid_of(drawn::wedge_light(wedge, width, height), 3);
  for (int y = 0; y < height; ++y) {
    for (int x = 0; x < width; ++x) {
      grid.light.set_light(x, y, 2, 0.5F * grid.light.light(x, y, 0));
    }
  }
  for (const WedgeStep& step : read_steps(grid, row_of(wedge), 1.0)) {
    EXPECT_NEAR(step.light[1] / step.light[0], 1.0, 1e-3);
    EXPECT_NEAR(step.light[2] / step.light[0], 0.5, 1e-3);
  }
}

/// Reads the steps and looks for bare light on a grid and its own logarithm.
FoundWedge with_bare_light(const drawn::Wedge& wedge, const ScanGrid& grid) {
  FoundWedge found;
  const WedgeRow row = row_of(wedge);
  found.steps = read_steps(grid, row, 1.0);
  const cv::Mat1f smooth = smoothed(finding_image(grid, 1'000'000, FindingLight::visual));
  add_bare_light(found, grid, row, smooth, unevenness(smooth), 1.0);
  return found;
}

TEST(AddBareLight, ReadsTheLightBesideTheWedge) {
  for (const double bare : {0.1, 0.5, 0.9}) {
    drawn::Wedge wedge = nine_steps();
    wedge.bare_light = bare;
    const FoundWedge found =
        with_bare_light(wedge, drawn::grid_of(drawn::noisy_wedge(wedge, width, height)));
    SCOPED_TRACE(bare);
    ASSERT_TRUE(found.bare_light.has_value());
    EXPECT_NEAR((*found.bare_light)[0] / bare, 1.0, 0.003);
    EXPECT_EQ(found.bare_clipped_share, 0.0);
    // Where it was read no step lies.
    for (const PointPx& corner : found.bare_corners_px) {
      const bool on_wedge = std::abs(corner.x - wedge.middle.x) < 4.5 * wedge.pitch_px &&
                            std::abs(corner.y - wedge.middle.y) < 0.5 * wedge.size_px;
      EXPECT_FALSE(on_wedge);
    }
  }
}

TEST(AddBareLight, IsAbsentWhereNothingIsBrighter) {
  drawn::Wedge wedge = nine_steps();
  wedge.surround_density = 4.0;
  EXPECT_FALSE(with_bare_light(wedge, drawn::grid_of(drawn::noisy_wedge(wedge, width, height)))
                   .bare_light.has_value());
  // A mount as dense as the third step.
  wedge.surround_density = wedge.density(2);
  EXPECT_FALSE(with_bare_light(wedge, drawn::grid_of(drawn::noisy_wedge(wedge, width, height)))
                   .bare_light.has_value());
}

TEST(AddBareLight, TellsThatItIsClipped) {
  drawn::Wedge wedge = nine_steps();
  wedge.bare_light = 1.3;
  const FoundWedge found =
      with_bare_light(wedge, drawn::grid_of(drawn::noisy_wedge(wedge, width, height)));
  ASSERT_TRUE(found.bare_light.has_value());
  EXPECT_GT(found.bare_clipped_share, 0.99);
}

}  // namespace
}  // namespace fogline
