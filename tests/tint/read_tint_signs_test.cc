#include "tint/judge_tint.h"
#include "tint/strip_of_colour.h"

#include <cmath>

#include <gtest/gtest.h>

namespace fogline {
namespace {

using colour::grey;
using colour::patches;
using colour::strip_of;
using colour::two_pictures;

/// Density of a picture: a ramp along the film.
double ramp(double along, double low = 0.3, double high = 1.2) {
  return low + (high - low) * std::fmod(along, 30.0) / 30.0;
}

TEST(ReadTintSigns, ReadsColourAndNeglectsDirt) {
  const DensityStrip strip = strip_of([](double along, double across) {
    // One patch in ten is dirty.
    const bool dirt = along > 2.0 && along < 6.9 && across < 8.0;
    return dirt ? PerChannel<double>{0.5, 0.55, 0.8} : PerChannel<double>{0.25, 0.30, 0.27};
  });
  const auto signs = read_tint_signs(strip, patches(), {});
  ASSERT_TRUE(signs.has_value());
  EXPECT_NEAR(signs->clear[1] - signs->clear[0], 0.05, 0.001);
  EXPECT_NEAR(signs->clear[2] - signs->clear[0], 0.02, 0.001);
  EXPECT_NEAR(signs->clear[0], 0.25, 0.005);
  EXPECT_LT(signs->channel_scatter, 0.001);
  EXPECT_NEAR(signs->area_mm2, 80.0, 1e-9);
  EXPECT_FALSE(signs->slope.has_value());
}

TEST(ReadTintSigns, ScatterIsThatOfTheReading) {
  double squares = 0.0;
  double claimed = 0.0;
  SeededNoise random(11);
  constexpr int rounds = 12;
  for (int i = 0; i < rounds; ++i) {
    std::vector<double> own(40);
    for (double& value : own) {
      value = random.normal(0.01);
    }
    const DensityStrip strip = strip_of([&](double along, double across) {
      const auto patch = static_cast<std::size_t>((along - 1.6) / 2.8) % 20;
      return PerChannel<double>{0.25, 0.25 + own[patch], across < 0.0 ? 0.0 : 0.25};
    });
    const auto signs = read_tint_signs(strip, patches(), {});
    ASSERT_TRUE(signs.has_value());
    squares += std::pow(signs->clear[1] - signs->clear[0], 2.0) / rounds;
    claimed += signs->channel_scatter / rounds;
  }
  EXPECT_GT(claimed, 0.8 * std::sqrt(squares));
  EXPECT_LT(claimed, 4.0 * std::sqrt(squares));
}

TEST(ReadTintSigns, GrainAndNoiseAreNoTexture) {
  const DensityStrip strip = strip_of([](double, double) {
    return PerChannel<double>{0.25, 0.3, 0.35};
  });
  const auto signs = read_tint_signs(strip, patches(), {});
  ASSERT_TRUE(signs.has_value());
  EXPECT_LT(signs->texture, 0.0004);
  EXPECT_EQ(signs->texture_spots, 20);
  // 400 pixels of noise 0.004 sqrt 2.
  EXPECT_NEAR(signs->texture_noise, 0.004 * std::sqrt(2.0) / 20.0, 0.0002);
}

TEST(ReadTintSigns, PatchyVeilIsTexture) {
  // Standard deviation over the film 0.02 / sqrt 2.
  const DensityStrip strip = strip_of([](double along, double across) {
    const double veil = 0.02 * std::sin(0.7 * along + 0.3 * across);
    return PerChannel<double>{0.25, 0.25 + 0.3 * veil, 0.3 + veil};
  });
  const auto signs = read_tint_signs(strip, patches(), {});
  ASSERT_TRUE(signs.has_value());
  EXPECT_GT(signs->texture, 0.007);
  EXPECT_LT(signs->texture, 0.025);
}

// Noise of a regressor flattens a plain regression: at noise 0.3 of a density spread of 0.26 the
// slope of neutral silver would read 0.99 over spots of 100 pixels, and here at least ten standard
// errors off.
TEST(ReadTintSigns, NoiseFakesNoSlope) {
  const DensityStrip strip =
      strip_of([](double along, double) { return grey(ramp(along)); }, 0.3, 0.05);
  const auto signs = read_tint_signs(strip, patches(), two_pictures);
  ASSERT_TRUE(signs && signs->slope);
  EXPECT_DOUBLE_EQ((*signs->slope)[0], 1.0);
  EXPECT_NEAR((*signs->slope)[1], 1.0, 4.0 * signs->slope_doubt);
  EXPECT_NEAR((*signs->slope)[2], 1.0, 4.0 * signs->slope_doubt);
  EXPECT_LT(signs->slope_doubt, 0.02);
}

TEST(ReadTintSigns, StainIsSlopeAndVeilIsNot) {
  const DensityStrip strip = strip_of([](double along, double) {
    const double silver = ramp(along);
    return PerChannel<double>{silver, 0.04 + 1.12 * silver, 0.1 + 1.35 * silver};
  });
  const auto signs = read_tint_signs(strip, patches(), two_pictures);
  ASSERT_TRUE(signs && signs->slope);
  EXPECT_NEAR((*signs->slope)[1], 1.12, 0.005);
  EXPECT_NEAR((*signs->slope)[2], 1.35, 0.005);
  EXPECT_LT(signs->slope_low, 0.4);
  EXPECT_GT(signs->slope_high, 1.1);
}

// A veil that differs from picture to picture while their densities differ too.
TEST(ReadTintSigns, VeilThatChangesBetweenPicturesIsNoSlope) {
  const DensityStrip strip = strip_of([](double along, double) {
    const bool second = along > 30.0;
    const double silver = ramp(along, second ? 0.8 : 0.3, second ? 1.3 : 0.6);
    return PerChannel<double>{silver, silver, silver + (second ? 0.08 : 0.0)};
  });
  const auto signs = read_tint_signs(strip, patches(), two_pictures);
  ASSERT_TRUE(signs && signs->slope);
  EXPECT_NEAR((*signs->slope)[2], 1.0, 0.005);
}

// Where little light is left, stray light of one channel bends the densities.
TEST(ReadTintSigns, DenseEndIsLeftOut) {
  const DensityStrip strip = strip_of([](double along, double) {
    const double silver = ramp(along, 0.3, 2.6);
    return PerChannel<double>{silver, silver, silver - 0.5 * std::max(0.0, silver - 1.6)};
  });
  const auto signs = read_tint_signs(strip, {{1.0, 3.0, 1.0, 19.0}}, two_pictures);
  ASSERT_TRUE(signs && signs->slope);
  EXPECT_NEAR((*signs->slope)[2], 1.0, 0.005);
  EXPECT_LT(signs->slope_high, 1.7);
}

TEST(ReadTintSigns, EvenPictureHasNoSlope) {
  const DensityStrip strip = strip_of([](double, double) { return grey(0.8); });
  const auto signs = read_tint_signs(strip, patches(), two_pictures);
  ASSERT_TRUE(signs.has_value());
  EXPECT_FALSE(signs->slope.has_value());
}

TEST(ReadTintSigns, GreyOrUnseenFilmHasNoSigns) {
  const DensityStrip one = strip_of([](double, double) { return grey(0.3); }, 0.0, 0.0, 1);
  EXPECT_FALSE(read_tint_signs(one, patches(), two_pictures).has_value());
  const DensityStrip hidden = strip_of([](double, double) { return grey(NAN); });
  EXPECT_FALSE(read_tint_signs(hidden, patches(), two_pictures).has_value());
  const DensityStrip plain = strip_of([](double, double) { return grey(0.3); });
  EXPECT_FALSE(read_tint_signs(plain, {}, two_pictures).has_value());
}

}  // namespace
}  // namespace fogline
