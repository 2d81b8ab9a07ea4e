#include <fogline/base/quantity.h>

#include <cmath>

#include <gtest/gtest.h>

namespace fogline {
namespace {

// D = -log10 T (ISO 5-1:2009; the values are its arithmetic, printed to four places).
TEST(Density, OfATransmittance) {
  struct Row {
    double transmittance;
    double density;
  };
  for (const Row row : {Row{0.5, 0.3010}, {0.25, 0.6021}, {0.1, 1.0}, {0.01, 2.0}, {0.001, 3.0}}) {
    EXPECT_NEAR(density_from_transmittance(row.transmittance), row.density, 5e-5);
    EXPECT_NEAR(transmittance_from_density(density_from_transmittance(row.transmittance)),
                row.transmittance, 1e-15);
  }
}

TEST(Density, BeyondFilm) {
  EXPECT_DOUBLE_EQ(density_from_transmittance(1.0), 0.0);
  EXPECT_LT(density_from_transmittance(1.1), 0.0);
  EXPECT_TRUE(std::isinf(density_from_transmittance(0.0)));
  EXPECT_GT(density_from_transmittance(0.0), 0.0);
  EXPECT_TRUE(std::isinf(density_from_transmittance(-0.01)));
}

// Luminance of red, green and blue of IEC 61966-2-1 (values written from memory).
TEST(VisualWeights, ShareOutAllLight) {
  EXPECT_NEAR(visual_weights[0] + visual_weights[1] + visual_weights[2], 1.0, 1e-12);
  EXPECT_DOUBLE_EQ(visual_from_channels<double>({1.0, 0.0, 0.0}, 3), 0.2126);
  EXPECT_DOUBLE_EQ(visual_from_channels<double>({0.0, 1.0, 0.0}, 3), 0.7152);
  EXPECT_DOUBLE_EQ(visual_from_channels<double>({0.0, 0.0, 1.0}, 3), 0.0722);
}

// A neutral grey filter reads the same in every band; one that takes green light away raises green
// density most, and visual density more than one that takes blue away.
TEST(VisualWeights, NeutralAndColouredFilters) {
  const double grey = transmittance_from_density(0.7);
  EXPECT_NEAR(density_from_transmittance(visual_from_channels<double>({grey, grey, grey}, 3)), 0.7,
              1e-12);
  const double without_green = visual_from_channels<double>({1.0, 0.1, 1.0}, 3);
  const double without_blue = visual_from_channels<double>({1.0, 1.0, 0.1}, 3);
  EXPECT_LT(without_green, without_blue);
}

TEST(VisualWeights, AGreyScanHasItsOneChannel) {
  EXPECT_DOUBLE_EQ(visual_from_channels<double>({0.25, 9.0, 9.0}, 1), 0.25);
}

}  // namespace
}  // namespace fogline
