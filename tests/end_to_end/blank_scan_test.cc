// A picture of the bare light beside a scan.
#include "measure_file.h"
#include "tables/shipped_knowledge.h"

#include <fogline/base/refusal.h>

#include <cmath>

#include <gtest/gtest.h>

namespace end_to_end {
namespace {

class BlankScan : public testing::Test {
 protected:
  BlankScan() {
    filmsim::Scenario scenario = filmsim::sample_scenario("flatbed-135-holder", 1);
    filmsim::Scenario bare = scenario;
    bare.strips.clear();
    bare.holder.present = false;
    simulated_ = filmsim::render(scenario);
    film_ = write_scan(simulated_, folder_.file("film.tif"));
    blank_ = write_scan(filmsim::render(bare), folder_.file("blank.tif"));
  }

  [[nodiscard]] static fogline::ScanMeasurement measured(const std::string& film,
                                                         const std::string& blank,
                                                         fogline::ClearReference clear) {
    const auto source = fogline::open_scan(film, {});
    fogline::MeasureOptions options = fogline::shipped_options();
    options.blank = fogline::open_scan(blank, {});
    options.clear = clear;
    return fogline::measure_roll(*source, options).measurement.scans.front();
  }

  TemporaryFolder folder_;
  filmsim::Simulated simulated_;
  std::string film_;
  std::string blank_;
};

// As if no perforation were in sight. The two pictures' exposures agree only as far as the lamp is
// even (the simulator exposes each for its brightest light), hence 0.03.
TEST_F(BlankScan, IsZeroWhereNoBareLightMayBeReadInTheScan) {
  const fogline::ScanMeasurement scan = measured(film_, blank_, fogline::ClearReference::none);
  EXPECT_EQ(scan.zero.source, fogline::ZeroSource::reference_scan);
  EXPECT_EQ(scan.densities_above, fogline::DensitiesAbove::light_path);
  ASSERT_TRUE(scan.base_fog.has_value());
  const double truth = simulated_.truth.strips.front().base_fog.visual;
  EXPECT_NEAR(scan.base_fog->visual.value, truth, 0.03);
}

TEST_F(BlankScan, TakesTheUnevennessOut) {
  const fogline::ScanMeasurement with = measured(film_, blank_, fogline::ClearReference::automatic);
  const fogline::RollMeasurement without = measure_file(film_);
  EXPECT_EQ(with.zero.source, fogline::ZeroSource::perforations);
  ASSERT_TRUE(with.zero.unevenness_density && without.scans.front().zero.unevenness_density);
  EXPECT_LT(*with.zero.unevenness_density, 0.5 * *without.scans.front().zero.unevenness_density);
  ASSERT_TRUE(with.base_fog.has_value());
  EXPECT_NEAR(with.base_fog->visual.value, simulated_.truth.strips.front().base_fog.visual, 0.02);
}

TEST_F(BlankScan, OfAnotherSizeIsRefused) {
  const std::string other =
      write_scan(filmsim::render(filmsim::sample_scenario("tiny", 3)), folder_.file("other.tif"));
  EXPECT_THROW(measured(film_, other, fogline::ClearReference::automatic), fogline::FileError);
}

}  // namespace
}  // namespace end_to_end
