#include "simulator/render.h"
#include "simulator/scenario_sampling.h"
#include "simulator/tell_truth.h"

#include <algorithm>
#include <cmath>

#include <gtest/gtest.h>
#include <nlohmann/json.hpp>

namespace filmsim {
namespace {

// Two frames of 135 film under a perfect scanner: no glare, no blur, hardly any noise.
Scenario plain_scenario(FilmAxis axis, double rotation_deg) {
  Scenario scenario;
  scenario.width_px = axis == FilmAxis::kX ? 1300 : 640;
  scenario.height_px = axis == FilmAxis::kX ? 640 : 1300;
  scenario.pixels_per_mm = 15.0;
  StripPlan strip;
  strip.geometry.axis = axis;
  strip.geometry.length_mm = 78.0;
  strip.geometry.rotation_deg = rotation_deg;
  strip.stock.base = {0.25, 0.24, 0.26};
  strip.stock.dye_left = {0.01, 0.08, 0.03};
  for (const double u : {20.0, 58.0}) {
    FramePlan frame;
    frame.middle_u_mm = u;
    frame.scene.kind = u < 30.0 ? SceneKind::kStreet : SceneKind::kPortrait;
    frame.scene.seed = 9;
    strip.frames.push_back(frame);
  }
  scenario.strips = {strip};
  scenario.scanner.glare.share = 0.0;
  scenario.scanner.blur_um = 0.0;
  scenario.scanner.full_well = 1e9;
  scenario.scanner.read_noise = 0.0;
  return scenario;
}

double density_at(const Simulated& scan, Point px, int channel) {
  const Picture& picture = scan.picture;
  const int x = static_cast<int>(px.x);
  const int y = static_cast<int>(px.y);
  const double light =
      light_from_encoded(picture.code(x, y, channel) / 65535.0, scan.scenario.encoding);
  return -std::log10(light / scan.scenario.scanner.bare_level);
}

TEST(Truth, HolesAreWhereTheLightIs) {
  for (const FilmAxis axis : {FilmAxis::kX, FilmAxis::kY}) {
    const Simulated scan = render(plain_scenario(axis, 0.8));
    const StripTruth& strip = scan.truth.strips[0];
    EXPECT_EQ(strip.holes_px.size(), 34U);  // 17 a row: middles at 1, 5.75, ... 77 of 78 mm
    for (const Point hole : strip.holes_px) EXPECT_NEAR(density_at(scan, hole, 1), 0.0, 0.003);
    EXPECT_EQ(scan.truth.zero_visible, "holes");
  }
}

TEST(Truth, BaseFogIsWhatAPerfectScannerReadsInTheGap) {
  const Simulated scan = render(plain_scenario(FilmAxis::kX, 0.0));
  const ChannelDensities& truth = scan.truth.strips[0].base_fog;
  EXPECT_NEAR(truth.green, 0.24 + 0.05 + 0.08, 1e-9);
  // Middle of the gap between the frames is at u = 39 mm, the picture's middle.
  const std::array<double, 3> expected = {truth.red, truth.green, truth.blue};
  for (int c = 0; c < 3; ++c) {
    double sum = 0.0;
    for (int y = 220; y < 420; ++y) sum += density_at(scan, {650.0, y + 0.5}, c);
    EXPECT_NEAR(sum / 200.0, expected[static_cast<std::size_t>(c)], 0.002);
  }
}

TEST(Truth, FrameCornersSplitPictureFromGap) {
  const Simulated scan = render(plain_scenario(FilmAxis::kX, 1.2));
  const FrameTruth& frame = scan.truth.frames[1];
  const double base = scan.truth.strips[0].base_fog.green;
  // Along the middle of each side: 0.3 mm outside is clear film, 0.3 mm inside is picture.
  for (std::size_t side = 0; side < 4; ++side) {
    const Point a = frame.corners_px[side];
    const Point b = frame.corners_px[(side + 1) % 4];
    const Point middle{0.5 * (a.x + b.x), 0.5 * (a.y + b.y)};
    const double length = std::hypot(b.x - a.x, b.y - a.y);
    const Point out{(b.y - a.y) / length * 4.5, -(b.x - a.x) / length * 4.5};
    EXPECT_NEAR(density_at(scan, {middle.x + out.x, middle.y + out.y}, 1), base, 0.05) << side;
    EXPECT_GT(density_at(scan, {middle.x - out.x, middle.y - out.y}, 1), base + 0.1) << side;
  }
}

TEST(Truth, BoxHasTheFramesOwnSizeAboutItsMiddle) {
  for (const FilmAxis axis : {FilmAxis::kX, FilmAxis::kY}) {
    const Simulated scan = render(plain_scenario(axis, 2.0));
    const FrameTruth& frame = scan.truth.frames[0];
    EXPECT_NEAR(std::max(frame.box_px.width, frame.box_px.height), 36.0 * 15.0, 1e-6);
    EXPECT_NEAR(std::min(frame.box_px.width, frame.box_px.height), 24.0 * 15.0, 1e-6);
    EXPECT_EQ(frame.box_px.width > frame.box_px.height, axis == FilmAxis::kX);
    Point mean{0.0, 0.0};
    for (const Point corner : frame.corners_px) {
      mean = {mean.x + corner.x / 4.0, mean.y + corner.y / 4.0};
    }
    EXPECT_NEAR(frame.box_px.x + 0.5 * frame.box_px.width, mean.x, 0.01);
    EXPECT_NEAR(frame.box_px.y + 0.5 * frame.box_px.height, mean.y, 0.01);
    // First corner is the top left, the second the top right.
    EXPECT_LT(frame.corners_px[0].x, frame.corners_px[1].x);
    EXPECT_LT(frame.corners_px[1].y, frame.corners_px[2].y);
  }
}

// The definition, spelled out the slow way: each spot's mean transmittance is summed over the
// pixels it touches, weighted by the shared area.
std::vector<double> brute_force_spots(const FilmPlanes& planes, const Scenario& scenario,
                                      const CameraGeometry& camera, const StripGeometry& strip) {
  const FramePlan& frame = scenario.strips[0].frames[0];
  const double side = 0.1 * scenario.pixels_per_mm;
  std::vector<double> spots;
  for (double du = -17.25; du <= 17.25; du += 0.1) {
    for (double dv = -11.25; dv <= 11.25; dv += 0.1) {
      const Point middle = camera.px_from_mm(strip.glass_from_film(
          {frame.middle_u_mm + du, 0.5 * strip.width_mm() + frame.middle_v_mm + dv}));
      double light = 0.0;
      for (int y = static_cast<int>(middle.y - side); y <= static_cast<int>(middle.y + side); ++y) {
        for (int x = static_cast<int>(middle.x - side); x <= static_cast<int>(middle.x + side);
             ++x) {
          const double shared_x =
              std::min(x + 1.0, middle.x + 0.5 * side) - std::max(x + 0.0, middle.x - 0.5 * side);
          const double shared_y =
              std::min(y + 1.0, middle.y + 0.5 * side) - std::max(y + 0.0, middle.y - 0.5 * side);
          if (shared_x <= 0.0 || shared_y <= 0.0) continue;
          light += shared_x * shared_y *
                   visual_transmittance(planes, scenario.strips[0].stock, planes.net.index(x, y));
        }
      }
      spots.push_back(-std::log10(light / (side * side)));
    }
  }
  std::sort(spots.begin(), spots.end());
  return spots;
}

TEST(Truth, PercentilesAreThoseOfBruteForce) {
  const Scenario scenario = plain_scenario(FilmAxis::kX, 1.7);
  const CameraGeometry camera(scenario.width_px, scenario.height_px, scenario.pixels_per_mm, {});
  const std::vector<StripGeometry> strips = {StripGeometry(scenario.strips[0].geometry)};
  FilmPlanes planes = lay_film(scenario, camera, strips);
  add_grain(planes, scenario);
  const FrameTruth truth = frame_truth(scenario, 0, 0, planes, camera, strips[0]);
  const std::vector<double> spots = brute_force_spots(planes, scenario, camera, strips[0]);
  const auto at = [&](double share) {
    return spots[static_cast<std::size_t>(share * static_cast<double>(spots.size() - 1))];
  };
  EXPECT_NEAR(*truth.shadow, at(0.02), 0.001);
  EXPECT_NEAR(*truth.middle, at(0.50), 0.001);
  EXPECT_NEAR(*truth.highlight, at(0.98), 0.001);
  EXPECT_LT(*truth.shadow, *truth.highlight - 0.5);
}

TEST(Truth, PercentileInterpolates) {
  std::vector<float> values = {4.0F, 1.0F, 3.0F, 2.0F};
  EXPECT_DOUBLE_EQ(percentile(values, 0.5), 2.5);
  EXPECT_DOUBLE_EQ(percentile(values, 0.0), 1.0);
  EXPECT_DOUBLE_EQ(percentile(values, 1.0), 4.0);
}

TEST(Truth, OverlapsAndBlanksAreToldAndHideEdges) {
  Scenario scenario = plain_scenario(FilmAxis::kX, 0.0);
  scenario.strips[0].frames[1].middle_u_mm = 54.0;  // 2 mm of overlap
  const Simulated overlapped = render(scenario);
  for (const FrameTruth& frame : overlapped.truth.frames) {
    EXPECT_TRUE(frame.overlap);
    EXPECT_FALSE(frame.edge_shows);
  }
  scenario = plain_scenario(FilmAxis::kX, 0.0);
  scenario.strips[0].frames[1].blank = true;
  const Simulated blank = render(scenario);
  EXPECT_FALSE(blank.truth.frames[1].edge_shows);
  EXPECT_NEAR(*blank.truth.frames[1].middle, blank.truth.strips[0].base_fog.visual, 0.003);
}

TEST(Truth, DensityOfTheEdgePrintIsReadInItsCore) {
  const Simulated scan = render(plain_scenario(FilmAxis::kX, 0.0));
  ASSERT_TRUE(scan.truth.strips[0].edge_print.has_value());
  // The darkest parts of the margin outside the upper row of holes are the print's cores.
  std::vector<double> margin;
  const double top = 320.0 - 0.5 * 34.975 * 15.0;
  for (int y = static_cast<int>(top) + 6; y < static_cast<int>(top) + 26; ++y) {
    for (int x = 80; x < 1220; ++x) margin.push_back(density_at(scan, {x + 0.5, y + 0.5}, 1));
  }
  std::sort(margin.begin(), margin.end());
  const double green_over_visual =
      scan.truth.strips[0].base_fog.green - scan.truth.strips[0].base_fog.visual;
  EXPECT_NEAR(margin[margin.size() * 98 / 100] - green_over_visual,
              *scan.truth.strips[0].edge_print, 0.03);
}

TEST(TruthJson, HasEveryPartAndSaysItIsInvented) {
  const Simulated scan = render(sample_scenario("tiny", 4));
  const nlohmann::json json = nlohmann::json::parse(truth_json(scan));
  EXPECT_TRUE(json.at("invented").get<bool>());
  EXPECT_EQ(json.at("seed"), 4);
  EXPECT_EQ(json.at("strips").size(), scan.truth.strips.size());
  EXPECT_EQ(json.at("frames").size(), scan.truth.frames.size());
  const nlohmann::json& frame = json.at("frames").at(0);
  EXPECT_EQ(frame.at("corners_px").size(), 4U);
  EXPECT_NEAR(frame.at("range").get<double>(),
              frame.at("highlight").get<double>() - frame.at("shadow").get<double>(), 2e-4);
  const nlohmann::json& strip = json.at("strips").at(0);
  EXPECT_EQ(strip.at("perforations"), strip.at("hole_centres_px").size());
  EXPECT_GT(strip.at("base_fog").at("visual").get<double>(), 0.0);
}

}  // namespace
}  // namespace filmsim
