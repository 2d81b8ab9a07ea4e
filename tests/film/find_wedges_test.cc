#include "film/wedges/find_wedges.h"

#include "film/drawn_scan.h"
#include "film/drawn_wedge.h"

#include <fogline/pixels/open_scan.h>

#include <cmath>
#include <filesystem>
#include <string>

#include <gtest/gtest.h>

namespace fogline {
namespace {

using drawn::Between;
using drawn::Wedge;

constexpr int width_px = 800;
constexpr int height_px = 400;

PointPx middle_of(const WedgeStep& step) {
  PointPx middle;
  for (const PointPx& corner : step.corners_px) {
    middle.x += 0.25 * corner.x;
    middle.y += 0.25 * corner.y;
  }
  return middle;
}

/// The search's only wedge must be steps `first` to `last` of the drawn one, each read within
/// `tolerance` in density.
void expect_steps(const WedgeSearch& search, const Wedge& wedge, int first, int last,
                  double tolerance = 0.006) {
  ASSERT_EQ(search.wedges.size(), 1U);
  const FoundWedge& found = search.wedges.front();
  ASSERT_EQ(static_cast<int>(found.steps.size()), last - first + 1);
  for (int i = first; i <= last; ++i) {
    const WedgeStep& step = found.steps[static_cast<std::size_t>(i - first)];
    const PointPx drawn = step_middle(wedge, i);
    const PointPx seen = middle_of(step);
    EXPECT_NEAR(seen.x, drawn.x, 0.15 * wedge.pitch_px) << i;
    EXPECT_NEAR(seen.y, drawn.y, 0.15 * wedge.pitch_px) << i;
    const double light =
        wedge.bare_light * (transmittance_from_density(wedge.density(i)) + wedge.floor);
    EXPECT_NEAR(std::log10(step.light[0] / light), 0.0, tolerance) << i;
    EXPECT_EQ(step.slot, i - first);
  }
}

WedgeSearch search_of(const Wedge& wedge) {
  return find_wedges(drawn::grid_of(noisy_wedge(wedge, width_px, height_px)));
}

TEST(FindWedges, EitherDirectionAlongEitherAxisAndTurned) {
  for (const double direction : {0.0, 180.0, 3.0, -3.0, 177.0, 183.0}) {
    Wedge wedge;
    wedge.direction_deg = direction;
    SCOPED_TRACE(direction);
    expect_steps(search_of(wedge), wedge, 0, 20);
  }
  for (const double direction : {90.0, -90.0, 87.0, -87.0}) {
    Wedge wedge;
    wedge.direction_deg = direction;
    wedge.middle = {150.0, 330.0};
    SCOPED_TRACE(direction);
    expect_steps(find_wedges(drawn::grid_of(noisy_wedge(wedge, 330, 660))), wedge, 0, 20);
  }
}

TEST(FindWedges, AnyNumberOfStepsAndPitch) {
  for (const auto& [steps, pitch, step_density] : {std::tuple{5, 60.0, 0.3},
                                                   {5, 120.0, 0.5},
                                                   {11, 40.0, 0.30},
                                                   {31, 20.0, 0.10},
                                                   {41, 17.0, 0.07}}) {
    Wedge wedge;
    wedge.steps = steps;
    wedge.pitch_px = pitch;
    wedge.step_density = step_density;
    SCOPED_TRACE(steps);
    expect_steps(search_of(wedge), wedge, 0, steps - 1);
  }
}

TEST(FindWedges, JointsGapsAndLooseStrips) {
  for (const Between between : {Between::clear_gap, Between::dark_joint}) {
    Wedge wedge;
    wedge.steps = 11;
    wedge.step_density = 0.25;
    wedge.pitch_px = 40.0;
    wedge.between = between;
    wedge.joint_px = 8.0;
    const WedgeSearch search = search_of(wedge);
    expect_steps(search, wedge, 0, 10);
    EXPECT_FALSE(search.wedges.front().touching);
  }
  Wedge loose;
  loose.steps = 6;
  loose.step_density = 0.2;
  loose.pitch_px = 90.0;
  loose.between = Between::clear_gap;
  loose.joint_px = 40.0;
  loose.shifts_px = {0.0, 9.0, -16.0, 18.0, -12.0, 11.0};
  expect_steps(search_of(loose), loose, 0, 5);
}

TEST(FindWedges, InAnOpaqueMask) {
  Wedge wedge;
  wedge.surround_density = 4.0;
  wedge.steps = 15;
  const WedgeSearch search = search_of(wedge);
  expect_steps(search, wedge, 0, 14);
  EXPECT_FALSE(search.wedges.front().bare_light.has_value());
}

TEST(FindWedges, BareLightBesideIt) {
  const Wedge wedge;
  const WedgeSearch search = search_of(wedge);
  ASSERT_EQ(search.wedges.size(), 1U);
  ASSERT_TRUE(search.wedges.front().bare_light.has_value());
  EXPECT_NEAR((*search.wedges.front().bare_light)[0], 0.8, 0.004);
  EXPECT_EQ(search.wedges.front().bare_clipped_share, 0.0);
}

TEST(FindWedges, ADirtyAndAScratchedStepDontBreakTheRow) {
  const Wedge wedge;
  Raster<float> light = wedge_light(wedge, width_px, height_px);
  const PointPx dirty = step_middle(wedge, 8);
  const PointPx scratched = step_middle(wedge, 13);
  for (int y = 180; y < 215; ++y) {
    for (int x = 0; x < width_px; ++x) {
      // Blotches over half of one step, a clear line along another.
      if (std::abs(x - dirty.x) < 9.0 && (x / 3 + y / 4) % 2 == 0) {
        light.at(x, y) *= 0.5F;
      }
      if (std::abs(x - scratched.x - 0.1 * (y - 200)) < 1.0) {
        light.at(x, y) = 0.5F;
      }
    }
  }
  add_noise(light, wedge);
  const WedgeSearch search = find_wedges(drawn::grid_of(light));
  ASSERT_EQ(search.wedges.size(), 1U);
  ASSERT_EQ(search.wedges.front().steps.size(), 21U);
  EXPECT_GT(search.wedges.front().steps[8].light_doubt[0],
            3.0 * search.wedges.front().steps[7].light_doubt[0] * 0.7);
}

TEST(FindWedges, TapeOverItsEnds) {
  Wedge wedge;
  Raster<float> light = wedge_light(wedge, width_px, height_px);
  // Cloudy tape over two thirds of the first and the last step's width.
  for (const int step : {0, 20}) {
    const PointPx middle = step_middle(wedge, step);
    for (int y = 170; y < 190; ++y) {
      for (int x = static_cast<int>(middle.x) - 60; x < static_cast<int>(middle.x) + 60; ++x) {
        light.at(x, y) *= 0.8F;
      }
    }
  }
  add_noise(light, wedge);
  const WedgeSearch search = find_wedges(drawn::grid_of(light));
  ASSERT_EQ(search.wedges.size(), 1U);
  EXPECT_GE(search.wedges.front().steps.size(), 19U);
}

TEST(FindWedges, FirstStepsAtTheTopCode) {
  Wedge wedge;
  wedge.bare_light = 1.6;
  wedge.first_density = 0.10;
  const WedgeSearch search = search_of(wedge);
  ASSERT_EQ(search.wedges.size(), 1U);
  // Steps of 0.10 and less than 0.204 read as bare light does and can't be told from it.
  const auto found = search.wedges.front().steps.size();
  EXPECT_EQ(found, 20U);
  EXPECT_GT(search.wedges.front().bare_clipped_share, 0.9);
}

TEST(FindWedges, DenseStepsBeyondTheScannersReach) {
  Wedge wedge;
  wedge.floor = 0.01;
  wedge.noise = 0.01;
  const WedgeSearch search = search_of(wedge);
  ASSERT_EQ(search.wedges.size(), 1U);
  const auto found = static_cast<int>(search.wedges.front().steps.size());
  EXPECT_GE(found, 15);
  for (int i = 0; i < found; ++i) {
    const PointPx drawn = step_middle(wedge, i);
    EXPECT_NEAR(middle_of(search.wedges.front().steps[static_cast<std::size_t>(i)]).x, drawn.x,
                4.0);
  }
}

TEST(FindWedges, BesideAStripOfFilm) {
  drawn::Strip strip;
  strip.frames = {strip.frame(3.0), strip.frame(41.0)};
  strip.end_mm = 90.0;
  const drawn::Scan scan = drawn::scan_of(strip, 8.0);
  const Raster<float> film = drawn::light_of(scan);
  Raster<float> light(800, 700, 1, static_cast<float>(scan.bare_light));
  for (int y = 0; y < std::min(540, film.height()); ++y) {
    std::copy_n(film.row(y), std::min(800, film.width()), light.row(y));
  }
  Wedge wedge;
  wedge.middle = {400.0, 620.0};
  wedge.bare_light = scan.bare_light;
  const Raster<float> beside = wedge_light(wedge, 800, 700);
  for (int y = 560; y < 700; ++y) {
    std::copy_n(beside.row(y), 800, light.row(y));
  }
  add_noise(light, wedge);
  const WedgeSearch search = find_wedges(drawn::grid_of(light));
  ASSERT_GE(search.wedges.size(), 1U);
  EXPECT_EQ(search.wedges.front().steps.size(), 21U);
  EXPECT_NEAR(middle_of(search.wedges.front().steps[0]).y, 620.0, 6.0);
}

TEST(FindWedges, NothingIsInvented) {
  drawn::Strip strip;
  strip.frames = {strip.frame(3.0), strip.frame(41.0)};
  EXPECT_TRUE(find_wedges(drawn::grid_of(drawn::scan_of(strip, 10.0))).wedges.empty());
  Raster<float> empty(600, 400, 1, 0.7F);
  EXPECT_TRUE(find_wedges(drawn::grid_of(empty)).wedges.empty());
  // Four steps are no wedge.
  Wedge four;
  four.steps = 4;
  four.step_density = 0.4;
  EXPECT_TRUE(search_of(four).wedges.empty());
}

// Six strips of evenly exposed film on a flatbed, measured by hand (see the folder's own note).
TEST(FindWedges, RealStepStrips) {
  const std::string file = FOGLINE_SHARED_DIR "/real/step-strips-flatbed.tif";
  if (!std::filesystem::exists(file)) {
    GTEST_SKIP() << "the real strips aren't here";
  }
  OpenOptions options;
  options.transfer = Transfer{TransferKind::linear, {}, TransferSource::option};
  const auto source = open_scan(file, options);
  const WedgeSearch search = find_wedges(source->survey({2'000'000}, {}));
  ASSERT_EQ(search.wedges.size(), 1U);
  const std::vector<std::array<double, 3>> by_hand{{42532, 41866, 32252}, {35114, 37466, 30896},
                                                   {30231, 34025, 29729}, {23679, 28555, 27586},
                                                   {18828, 23829, 25416}, {15257, 19773, 23327}};
  const FoundWedge& found = search.wedges.front();
  ASSERT_EQ(found.steps.size(), by_hand.size());
  for (std::size_t i = 0; i < by_hand.size(); ++i) {
    for (std::size_t c = 0; c < 3; ++c) {
      EXPECT_NEAR(65535.0 * found.steps[i].light[c] / by_hand[i][c], 1.0, 0.01) << i << ' ' << c;
    }
  }
  EXPECT_TRUE(found.bare_light.has_value());
}

}  // namespace
}  // namespace fogline
