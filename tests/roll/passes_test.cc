// A scan's file is read once, whatever is learned about its tone curve on the way.

#include "pixels/counting_source.h"
#include "tables/shipped_knowledge.h"

#include <fogline/roll/calibrate_scanner.h>
#include <fogline/roll/measure_roll.h>
#include <fogline/tables/read_tables.h>

#include <string>

#include <gtest/gtest.h>

namespace fogline {
namespace {

using test::CountedScan;

std::string sample(const std::string& name) {
  return std::string(FOGLINE_SOURCE_DIR) + "/sample_scans/" + name;
}

WedgeReference reference() {
  return read_wedge_reference(sample("wedge.csv"));
}

TEST(Passes, APlainScanIsReadOnce) {
  CountedScan scan(sample("bracket-135.tif"));
  measure_roll(scan.source(), shipped_options());
  EXPECT_DOUBLE_EQ(scan.passes(), 1.0);
}

TEST(Passes, ACalibrationAndTheScanReadByItAreReadOnce) {
  CountedScan wedge(sample("wedge.tif"));
  const CalibrationRun run = calibrate_from_wedge(
      wedge.source(), reference(), ScannerDevice::flatbed, shipped_knowledge().scan, {});
  EXPECT_DOUBLE_EQ(wedge.passes(), 1.0);
  CountedScan scan(sample("bracket-135.tif"));
  MeasureOptions options = shipped_options();
  options.scanner = run.calibration;
  measure_roll(scan.source(), options);
  EXPECT_DOUBLE_EQ(scan.passes(), 1.0);
}

// The samples' codes are on the display's curve and on that of light: both answers are had.
TEST(Passes, AScanThatDoesNotTellItsCurveIsReadOnce) {
  for (const auto& [name, kind] : {std::pair("bracket-135.tif", TransferKind::srgb),
                                   std::pair("thin-dye-135.tif", TransferKind::linear)}) {
    OpenedPicture picture = open_picture(sample(name));
    picture.curve = ToneCurve{};
    picture.info.transfer_known = false;
    CountedScan scan(std::move(picture));
    const ScanMeasurement measured =
        measure_roll(scan.source(), shipped_options()).measurement.scans.front();
    EXPECT_TRUE(measured.info.transfer_known) << name;
    EXPECT_EQ(measured.info.transfer.kind, kind) << name;
    EXPECT_DOUBLE_EQ(scan.passes(), 1.0) << name;
  }
}

TEST(Passes, AScanWithItsOwnWedgeIsReadOnce) {
  CountedScan scan(sample("wedge.tif"));
  MeasureOptions options = shipped_options();
  options.wedge = reference();
  const ScanMeasurement measured = measure_roll(scan.source(), options).measurement.scans.front();
  EXPECT_FALSE(measured.steps.empty());
  EXPECT_DOUBLE_EQ(scan.passes(), 1.0);
}

}  // namespace
}  // namespace fogline
