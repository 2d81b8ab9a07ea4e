#include "base/refusal_of.h"
#include "roll/drawn_source.h"
#include "tables/shipped_knowledge.h"

#include <fogline/base/quantity.h>
#include <fogline/roll/calibrate_scanner.h>

#include <cmath>
#include <memory>
#include <vector>

#include <gtest/gtest.h>

namespace fogline {
namespace {

using drawn::DrawnSource;

constexpr int side_px = 60;

/// Even pictures whose codes lie on the display curve although the file says they are light.
class Pictures {
 public:
  explicit Pictures(const std::vector<double>& lights, int bits_of_last = 16) {
    for (const double light : lights) {
      ScanInfo info;
      info.file = "picture-" + std::to_string(sources_.size()) + ".tif";
      info.bits = sources_.size() + 1 == lights.size() ? bits_of_last : 16;
      info.channels = 1;
      info.transfer.kind = TransferKind::linear;
      info.transfer.source = TransferSource::icc_profile;
      info.transfer_known = true;
      sources_.push_back(std::make_unique<DrawnSource>(
          Raster<float>(side_px, side_px, 1, static_cast<float>(light)), info, true));
      pointers_.push_back(sources_.back().get());
    }
  }
  [[nodiscard]] const std::vector<ScanSource*>& all() const { return pointers_; }

 private:
  std::vector<std::unique_ptr<DrawnSource>> sources_;
  std::vector<ScanSource*> pointers_;
};

/// What a calibration reads of light on the same device, as a density above light of 0.9.
double read_density(const ScannerCalibration& calibration, double light) {
  const CodeCurve& curve = calibration.curves.of_channel[0];
  return std::log10(curve.light_of(drawn::encoded(0.9)) / curve.light_of(drawn::encoded(light)));
}

std::vector<double> layered(double layer, int count) {
  std::vector<double> lights;
  for (int i = 0; i < count; ++i) {
    lights.push_back(0.9 * std::pow(10.0, -layer * i));
  }
  return lights;
}

// Densities of layers add (Bouguer's law), so equal steps tell the display curve's shape, and one
// known layer its scale.
TEST(CalibrateFromLayers, AKnownLayerMakesDensitiesTrue) {
  const Pictures pictures(layered(0.25, 7));
  const ScannerCalibration calibration =
      calibrate_from_layers(pictures.all(), {0, 1, 2, 3, 4, 5, 6}, 0.25, ScannerDevice::flatbed,
                            shipped_knowledge().scan, {})
          .calibration;
  EXPECT_FALSE(calibration.shape_only);
  for (const double density : {0.1, 0.4, 0.9, 1.4}) {
    const double read = read_density(calibration, 0.9 * std::pow(10.0, -density));
    EXPECT_NEAR(read, density, 0.01);
    EXPECT_LE(std::abs(read - density),
              coverage_factor_95 * std::hypot(calibration.doubt_at(density).fit,
                                              calibration.slope_doubt_share * density));
  }
}

// Any power of light fits layers of unknown density: ranges compare, densities don't.
TEST(CalibrateFromLayers, WithoutAKnownLayerOnlyTheShapeIsTold) {
  const Pictures pictures(layered(0.25, 7));
  const CalibrationRun run =
      calibrate_from_layers(pictures.all(), {0, 1, 2, 3, 4, 5, 6}, std::nullopt,
                            ScannerDevice::unknown, shipped_knowledge().scan, {});
  EXPECT_TRUE(run.calibration.shape_only);
  EXPECT_GE(run.calibration.slope_doubt_share, 0.2);
  const double one = read_density(run.calibration, 0.9 * std::pow(10.0, -0.5));
  const double two = read_density(run.calibration, 0.9 * std::pow(10.0, -1.0));
  // Layers scatter by 0.006 each: the shape is known to what the fit says, in its own unit.
  const double unit = one / 0.5;
  EXPECT_NEAR(two, 2.0 * one,
              coverage_factor_95 * std::hypot(run.calibration.doubt_at(1.0 * unit).fit,
                                              2.0 * run.calibration.doubt_at(0.5 * unit).fit));
  EXPECT_NEAR(two / one, 2.0, 0.05);
  EXPECT_GT(std::abs(one - 0.5), 0.1) << "the display curve isn't light";
  ASSERT_FALSE(run.cautions.empty());
  EXPECT_EQ(run.cautions.front().fact.kind, CautionKind::shape_only);
}

// Light through one shutter is in proportion to time (reciprocity of a sensor).
TEST(CalibrateFromBracket, ShutterTimesMakeDensitiesTrue) {
  std::vector<double> lights;
  std::vector<double> times_s;
  for (int i = 0; i < 8; ++i) {
    lights.push_back(0.9 * std::pow(2.0, -i));
    times_s.push_back(std::pow(2.0, -i));
  }
  const Pictures pictures(lights);
  const ScannerCalibration calibration =
      calibrate_from_bracket(pictures.all(), times_s, usual_shutter_doubt_stops,
                             ScannerDevice::camera, {})
          .calibration;
  EXPECT_EQ(calibration.device, ScannerDevice::camera);
  for (const double density : {0.3, 1.0, 1.8}) {
    EXPECT_NEAR(read_density(calibration, 0.9 * std::pow(10.0, -density)), density, 0.02);
  }
  EXPECT_NEAR(calibration.shown_to_density, 7.0 * std::log10(2.0), 0.01);
}

TEST(CalibrateFromBracket, PicturesWithoutAnyDifferenceAreRefused) {
  const Pictures pictures(std::vector<double>(5, 0.4));
  EXPECT_EQ(test::kind_of_refusal([&] {
              calibrate_from_bracket(pictures.all(), {1.0, 0.5, 0.25, 0.125, 0.0625},
                                     usual_shutter_doubt_stops, ScannerDevice::camera, {});
            }),
            Refusal::codes_not_falling);
}

TEST(CalibrateFromLayers, AsManyAreasAsLayersAreWanted) {
  const Pictures pictures(layered(0.25, 3));
  EXPECT_EQ(test::kind_of_refusal([&] {
              calibrate_from_layers(pictures.all(), {0, 1, 2}, 0.25, ScannerDevice::unknown,
                                    shipped_knowledge().scan, {});
            }),
            Refusal::too_few_lights);
  const auto named_more = test::refusal_of([&] {
    calibrate_from_layers(pictures.all(), {0, 1, 2, 3}, 0.25, ScannerDevice::unknown,
                          shipped_knowledge().scan, {});
  });
  ASSERT_TRUE(named_more);
  EXPECT_EQ(named_more->why(), (Fact<Refusal>{Refusal::areas_not_as_named, {3.0, 4.0}, {}, {}}));
}

TEST(CalibrateFromLayers, PicturesOfAnotherSettingAreRefusedByName) {
  const Pictures pictures(layered(0.25, 5), 8);
  const auto refused = test::refusal_of([&] {
    calibrate_from_layers(pictures.all(), {0, 1, 2, 3, 4}, 0.25, ScannerDevice::unknown,
                          shipped_knowledge().scan, {});
  });
  ASSERT_TRUE(refused);
  EXPECT_EQ(refused->file(), "picture-4.tif");
  EXPECT_EQ(refused->why(), (Fact<Refusal>{Refusal::shots_differ, {}, {"picture-0.tif"}, {}}));
}

}  // namespace
}  // namespace fogline
