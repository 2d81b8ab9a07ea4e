#include <fogline/base/raster.h>

#include <cmath>

#include <gtest/gtest.h>

namespace fogline {
namespace {

TEST(Raster, LaysChannelsInterleavedRowByRow) {
  Raster<int> raster(3, 2, 2);
  int next = 0;
  for (int& sample : raster.samples()) {
    sample = next++;
  }
  EXPECT_EQ(raster.samples().size(), 12U);
  EXPECT_EQ(raster.at(0, 0, 0), 0);
  EXPECT_EQ(raster.at(0, 0, 1), 1);
  EXPECT_EQ(raster.at(2, 0, 1), 5);
  EXPECT_EQ(raster.at(0, 1, 0), 6);
  EXPECT_EQ(raster.at(2, 1, 1), 11);
  EXPECT_EQ(raster.row(1), raster.samples().data() + 6);
}

TEST(Raster, KnowsItsBorders) {
  const Raster<float> raster(4, 3, 1, 0.5F);
  EXPECT_TRUE(raster.contains(0, 0));
  EXPECT_TRUE(raster.contains(3, 2));
  EXPECT_FALSE(raster.contains(4, 2));
  EXPECT_FALSE(raster.contains(3, 3));
  EXPECT_FALSE(raster.contains(-1, 0));
  EXPECT_FALSE(raster.contains(0, -1));
  EXPECT_EQ(raster.at(3, 2), 0.5F);
  EXPECT_TRUE(Raster<float>().empty());
  EXPECT_FALSE(raster.empty());
}

double density_of_root_code(double code) {
  return -2.0 * std::log10(code / 65535.0);
}

/// Width of the code step at a density, as a density.
double step_at(double density) {
  const double code = std::round(65535.0 * std::pow(10.0, -0.5 * density));
  return density_of_root_code(code) - density_of_root_code(code + 1.0);
}

// The steps that the header of LightRaster promises, from its definition: the square root of light
// in 16 bits. It prints one digit, so half a unit of it is granted at D 3.
TEST(LightRaster, StepsAreAsSmallAsPromised) {
  for (double density = 0.0; density <= 2.0; density += 0.05) {
    EXPECT_LT(step_at(density), 0.0002) << density;
  }
  EXPECT_NEAR(step_at(3.0), 0.0004, 0.00005);
  EXPECT_LT(step_at(4.0), 0.0014);
}

TEST(LightRaster, KeepsLightWithinHalfAStep) {
  LightRaster raster(1, 1, 1);
  for (double density = 0.0; density <= 4.0; density += 0.0137) {
    const double light = std::pow(10.0, -density);
    raster.set_light(0, 0, 0, static_cast<float>(light));
    const double read = -std::log10(static_cast<double>(raster.light(0, 0, 0)));
    // Half a step, and the rounding of float.
    EXPECT_NEAR(read, density, 0.5 * step_at(density) + 2e-6);
  }
}

TEST(LightRaster, HoldsLightAtItsEnds) {
  LightRaster raster(2, 1, 3);
  raster.set_light(1, 0, 2, 1.7F);
  raster.set_light(0, 0, 1, -0.2F);
  EXPECT_EQ(raster.light(1, 0, 2), 1.0F);
  EXPECT_EQ(raster.root_codes().at(1, 0, 2), 65535);
  EXPECT_EQ(raster.light(0, 0, 1), 0.0F);
}

}  // namespace
}  // namespace fogline
