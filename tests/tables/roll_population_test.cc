#include "tables/roll_population.h"

#include <gtest/gtest.h>

namespace fogline {
namespace {

TEST(RollPopulation, ShippedValuesAreTheDefaults) {
  // The header says that a default population is the shipped one: tests and callers rely on it.
  const RollPopulation shipped = roll_population_from_calibration();
  const RollPopulation defaults;
  EXPECT_EQ(shipped.exposure_sd_stops, defaults.exposure_sd_stops);
  EXPECT_EQ(shipped.exposure_latitude_stops, defaults.exposure_latitude_stops);
  EXPECT_EQ(shipped.contrast_sd_share, defaults.contrast_sd_share);
  EXPECT_EQ(shipped.shadow_density, defaults.shadow_density);
  EXPECT_EQ(shipped.highlight_density, defaults.highlight_density);
  EXPECT_EQ(shipped.placement_roll_sd_stops, defaults.placement_roll_sd_stops);
  EXPECT_EQ(shipped.range_roll_sd_stops, defaults.range_roll_sd_stops);
  EXPECT_EQ(shipped.toe_densities, defaults.toe_densities);
  EXPECT_EQ(shipped.maximum_densities, defaults.maximum_densities);
  EXPECT_EQ(shipped.edge_print_density, defaults.edge_print_density);
  EXPECT_EQ(shipped.leader_sd_share, defaults.leader_sd_share);
  EXPECT_EQ(shipped.scanner_factor, defaults.scanner_factor);
  EXPECT_EQ(shipped.assumed_camera_curve_sd_share, defaults.assumed_camera_curve_sd_share);
  EXPECT_EQ(shipped.grey_base_density, defaults.grey_base_density);
  EXPECT_EQ(shipped.fogged_share, defaults.fogged_share);
}

}  // namespace
}  // namespace fogline
