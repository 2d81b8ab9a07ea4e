// Published tables of real scanners (sources in density/published_tables.h), drawn as wedge
// pictures and calibrated from the file.
#include "density/published_tables.h"
#include "measure_file.h"
#include "simulator/picture_files.h"
#include "simulator/wedge_scan.h"
#include "tables/shipped_knowledge.h"

#include <fogline/roll/calibrate_scanner.h>

#include <cmath>

#include <gtest/gtest.h>

namespace end_to_end {
namespace {

using fogline::published::TableStep;

constexpr double pixels_per_inch = 200.0;
constexpr int step_px = 40;

/// Codes of density 0 by the formulas published with the tables: a: 10^4.80662; E: 275 + 60000 and
/// 55 * 2.1^2.05.
constexpr double bare_a = 64065.0;
constexpr double bare_e_16 = 60275.0;
constexpr double bare_e_8 = 251.8;

/// Calibrates a picture of the table, its steps touching, on bare light.
fogline::ScannerCalibration calibrated(const std::vector<TableStep>& table, int bits,
                                       double bare_code) {
  std::vector<filmsim::TableStep> drawn;
  fogline::WedgeReference reference;
  reference.name = "published";
  for (const TableStep& step : table) {
    drawn.push_back({step.code, step.scatter});
    reference.steps.push_back({std::to_string(drawn.size()), step.density, 0.014});
  }
  filmsim::EncodingSettings encoding;
  encoding.bits = bits;
  encoding.channels = 1;
  const TemporaryFolder folder;
  write_tiff(picture_of_table(drawn, bits, step_px, bare_code, 11), encoding, pixels_per_inch,
             folder.file("wedge.tif"));
  const auto source = fogline::open_scan(folder.file("wedge.tif"), {});
  return fogline::calibrate_from_wedge(*source, reference, fogline::ScannerDevice::unknown,
                                       fogline::shipped_knowledge().scan, {})
      .calibration;
}

TEST(PublishedWedge, OfDigitiserA) {
  const fogline::ScannerCalibration calibration =
      calibrated(fogline::published::digitiser_a, 16, bare_a);
  ASSERT_GE(calibration.steps.size(), 21U);
  EXPECT_EQ(calibration.steps.front().number, 1);
  for (const fogline::CalibrationStep& step : calibration.steps) {
    // The step of 3.60, beyond use, misses the published inverse by 0.22 as well.
    if (step.number < 22) {
      EXPECT_EQ(step.outlier, step.number == 5) << step.number;
    }
    const TableStep& truth =
        fogline::published::digitiser_a.at(static_cast<std::size_t>(step.number - 1));
    EXPECT_EQ(step.reference_density, truth.density);
    EXPECT_NEAR(65535.0 * step.code[0], truth.code, 0.001 * truth.code + 0.5);
    if (!step.outlier && truth.density < 2.7) {
      EXPECT_NEAR(step.density, truth.density, 0.017) << step.number;
    }
  }
  EXPECT_LT(calibration.residual_rms, 0.01);
  EXPECT_GT(calibration.density_limit, 2.4);
}

TEST(PublishedWedge, OfDigitiserEInSixteenBitsAndInEight) {
  const fogline::ScannerCalibration sixteen =
      calibrated(fogline::published::digitiser_e_16, 16, bare_e_16);
  ASSERT_EQ(sixteen.steps.size(), fogline::published::digitiser_e_16.size());
  for (const fogline::CalibrationStep& step : sixteen.steps) {
    EXPECT_NEAR(step.density, step.reference_density, 0.015) << step.number;
  }
  const fogline::ScannerCalibration eight =
      calibrated(fogline::published::digitiser_e_8, 8, bare_e_8);
  ASSERT_GE(eight.steps.size(), 19U);
  for (const fogline::CalibrationStep& step : eight.steps) {
    if (step.reference_density < 1.7) {
      EXPECT_NEAR(step.density, step.reference_density, 0.03) << step.number;
    }
  }
}

}  // namespace
}  // namespace end_to_end
