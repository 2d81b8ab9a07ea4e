#include "density/callier.h"
#include "film/drawn_scan.h"
#include "roll/drawn_source.h"
#include "roll/reading/scan_reading.h"
#include "tables/shipped_knowledge.h"

#include <fogline/roll/measure_roll.h>

#include <algorithm>
#include <cmath>

#include <gtest/gtest.h>

namespace fogline {
namespace {

constexpr double base_density = 0.28;
constexpr double net_density = 0.9;

/// Two even pictures whose silver reads `callier` times too dense, and fog that does.
Raster<float> seen_in_directed_light(double callier, double fog = 0.0) {
  drawn::Strip strip;
  strip.end_mm = 80.0;
  strip.base_density = base_density + directed_density(fog, callier);
  const double seen = directed_density(net_density + fog, callier) - directed_density(fog, callier);
  strip.patches = {{strip.frame(2.0), seen}, {strip.frame(40.5), seen}};
  return drawn::light_of(drawn::scan_of(strip));
}

ScanMeasurement measured_on(ScannerDevice device, const Raster<float>& light) {
  ScanInfo info;
  info.file = "drawn";
  info.bits = 16;
  info.samples_per_pixel = 3;
  info.channels = 3;
  info.transfer = {TransferKind::linear, {}, TransferSource::icc_profile};
  drawn::DrawnSource source(light, info, false);
  MeasureOptions options = shipped_options();
  options.device = device;
  return read_one_scan(source, options, 1, {}).scan;
}

const Quantity& middle_of_first(const ScanMeasurement& scan) {
  return *scan.frames.at(0).tone.middle;
}

// Within each kind's span (calibration/devices.toml) the told device holds the truth in less than
// half the doubt of an untold one.
TEST(ToldDevice, TakesItsKindsFactorOut) {
  struct Case {
    ScannerDevice device;
    double callier;
    double u95;
  };
  for (const Case& one :
       {Case{ScannerDevice::camera, 1.03, 0.08}, Case{ScannerDevice::flatbed, 1.04, 0.14},
        Case{ScannerDevice::flatbed, 1.17, 0.14}, Case{ScannerDevice::film_scanner, 1.35, 0.14}}) {
    const Raster<float> light = seen_in_directed_light(one.callier);
    const ScanMeasurement told = measured_on(one.device, light);
    const ScanMeasurement untold = measured_on(ScannerDevice::unknown, light);
    ASSERT_EQ(told.frames.size(), 2U);
    const Quantity& density = middle_of_first(told);
    SCOPED_TRACE(one.callier);
    EXPECT_NEAR(density.value, base_density + net_density, density.u95);
    EXPECT_LT(density.u95, one.u95);
    EXPECT_LT(density.u95, 0.5 * middle_of_first(untold).u95);
    EXPECT_TRUE(told.device_told);
    EXPECT_EQ(told.device, one.device);
    EXPECT_FALSE(untold.device_told);
    // Clear film has little silver: it stays what it was.
    EXPECT_NEAR(told.base_fog->visual.value, untold.base_fog->visual.value, 0.015);
  }
}

// Fog is silver: base plus fog far above the usual is as doubtful as that silver's angle of light.
TEST(ToldDevice, FogIsSilver) {
  for (const double callier : {1.1, 1.35}) {
    const ScanMeasurement fogged =
        measured_on(ScannerDevice::unknown, seen_in_directed_light(callier, 0.35));
    const ScanMeasurement clean =
        measured_on(ScannerDevice::unknown, seen_in_directed_light(callier));
    ASSERT_TRUE(fogged.base_fog && clean.base_fog);
    const Quantity& base = fogged.base_fog->visual;
    SCOPED_TRACE(callier);
    EXPECT_NEAR(base.value, base_density + 0.35, base.u95);
    EXPECT_GT(base.u95, 2.5 * clean.base_fog->visual.u95);
    EXPECT_LT(base.u95, 0.2);
    EXPECT_LT(clean.base_fog->visual.u95, 0.03);
  }
  const ScanMeasurement told =
      measured_on(ScannerDevice::film_scanner, seen_in_directed_light(1.3, 0.35));
  EXPECT_NEAR(told.base_fog->visual.value, base_density + 0.35, 0.02);
  EXPECT_LT(told.base_fog->visual.u95, 0.07);
}

}  // namespace
}  // namespace fogline
