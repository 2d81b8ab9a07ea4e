#include "tint/judge_tint.h"

#include "tables/shipped_knowledge.h"

#include <algorithm>
#include <cmath>

#include <gtest/gtest.h>

namespace fogline {
namespace {

constexpr double base_density = 0.28;

/// A strip read well, clear film this much denser than a grey base.
TintSigns strip_with(const PerChannel<double>& veil, double texture = 0.0005) {
  TintSigns strip;
  for (std::size_t c = 0; c < veil.size(); ++c) {
    strip.clear[c] = base_density + veil[c];
  }
  strip.channel_scatter = 0.0006;
  strip.texture = texture;
  strip.texture_noise = 0.0004;
  strip.texture_spots = 30;
  strip.area_mm2 = 60.0;
  strip.slope = PerChannel<double>{1.0, 1.0, 1.0};
  strip.slope_doubt = 0.004;
  strip.slope_low = 0.4;
  strip.slope_high = 1.2;
  return strip;
}

TintLimits good_limits() {
  TintLimits limits;
  limits.zero_doubt = 0.002;
  limits.curve_share = 0.02;
  return limits;
}

TintLimits known_base() {
  TintLimits limits = good_limits();
  limits.base_tint = PerChannel<double>{0.25, 0.25, 0.25};
  return limits;
}

Tint judged(const TintSigns& strip, const TintLimits& limits = good_limits()) {
  return judge_tint({strip}, limits, shipped_knowledge().scan.tints);
}

void expect_covers(const Quantity& quantity, double truth) {
  EXPECT_LE(*quantity.lower95, truth);
  EXPECT_GE(*quantity.upper95, truth);
}

// Blue 0.08 over red and green with texture is what unfixed halide or its products leave ("B
// excess, milky, scatter: D rises everywhere", United States Navy training course 14209), not dye.
TEST(JudgeTint, BlueExcessWithTextureIsNoDye) {
  const Tint tint = judged(strip_with({0.0, 0.0, 0.08}, 0.02));
  EXPECT_TRUE(tint.kind == TintKind::fixer_haze || tint.kind == TintKind::yellow_stain);
  for (const TintComponent& component : tint.components) {
    EXPECT_NE(component.kind, TintKind::dye_left);
  }
}

// Green 0.05 over red and blue, even, in rebate and image: sensitising dye left (common practice,
// no public source); which dye, three bands can't say.
TEST(JudgeTint, GreenExcessIsDyeLeft) {
  const Tint tint = judged(strip_with({0.0, 0.05, 0.0}));
  EXPECT_EQ(tint.kind, TintKind::dye_left);
  ASSERT_TRUE(tint.density.has_value());
  expect_covers(*tint.density, 0.05);
  EXPECT_GT(tint.confidence, 0.8);
  EXPECT_TRUE(tint.may_be_stock);
}

// A neutral rise of 0.10 is fog: silver, no cast (equal rise in red, green and blue; common
// practice, no source).
TEST(JudgeTint, NeutralRiseIsNoTint) {
  for (const TintLimits& limits : {good_limits(), known_base()}) {
    const Tint tint = judged(strip_with({0.1, 0.1, 0.1}), limits);
    EXPECT_EQ(tint.kind, TintKind::none);
    EXPECT_TRUE(tint.components.empty());
    EXPECT_GT(tint.confidence, 0.95);
    EXPECT_TRUE(tint.density);
  }
}

TEST(JudgeTint, RedExcessIsDyeLeft) {
  EXPECT_EQ(judged(strip_with({0.06, 0.025, 0.0})).kind, TintKind::dye_left);
}

TEST(JudgeTint, EvenBlueExcessIsYellowStain) {
  const Tint tint = judged(strip_with({0.0, 0.015, 0.06}));
  EXPECT_EQ(tint.kind, TintKind::yellow_stain);
  expect_covers(*tint.density, 0.06);
}

TEST(JudgeTint, PatchyWarmVeilIsHaze) {
  const Tint tint = judged(strip_with({0.05, 0.07, 0.1}, 0.012));
  EXPECT_EQ(tint.kind, TintKind::fixer_haze);
  expect_covers(*tint.density, 0.1);
}

// Channels of grey bases differ by 0.01 and more between stocks.
TEST(JudgeTint, ColourOfAGreyBaseIsNoTint) {
  for (const PerChannel<double>& own :
       {PerChannel<double>{0.01, 0.0, 0.0}, PerChannel<double>{0.0, 0.01, 0.0},
        PerChannel<double>{0.0, 0.0, 0.01}}) {
    EXPECT_EQ(judged(strip_with(own)).kind, TintKind::none);
  }
}

TEST(JudgeTint, KnownBaseShowsFainterTints) {
  const TintSigns strip = strip_with({0.0, 0.022, 0.0});
  const Tint unknown = judged(strip);
  const Tint known = judged(strip, known_base());
  EXPECT_EQ(unknown.kind, TintKind::none);
  EXPECT_EQ(known.kind, TintKind::dye_left);
  EXPECT_FALSE(known.may_be_stock);
  EXPECT_LT(*known.detection_limit, 0.6 * *unknown.detection_limit);
}

TEST(JudgeTint, ColourOfTheKnownBaseIsTakenOff) {
  TintLimits limits = known_base();
  (*limits.base_tint)[0] += 0.06;
  EXPECT_EQ(judged(strip_with({0.06, 0.0, 0.0}), limits).kind, TintKind::none);
  EXPECT_NE(judged(strip_with({0.0, 0.0, 0.0}), limits).kind, TintKind::none);
}

TEST(JudgeTint, DoubtOfZeroGrowsTheLimitUntilNothingCanBeTold) {
  TintLimits limits = good_limits();
  double before = *judged(strip_with({}), limits).detection_limit;
  for (const double doubt : {0.01, 0.02, 0.04}) {
    limits.zero_doubt = doubt;
    const double limit = *judged(strip_with({}), limits).detection_limit;
    EXPECT_GT(limit, before);
    before = limit;
  }
  const Tint tint = judged(strip_with({0.0, 0.03, 0.0}), limits);
  EXPECT_FALSE(tint.kind);
  EXPECT_FALSE(tint.density.has_value());
  EXPECT_EQ(tint.kind.why().kind, Unknown::only_strong_tints);
}

// Told means told: at the limit most tints show, at half of it few do.
TEST(JudgeTint, LimitIsWhereTintsShow) {
  const double limit = *judged(strip_with({})).detection_limit;
  EXPECT_EQ(judged(strip_with({0.2 * limit, limit, 0.15 * limit})).kind, TintKind::dye_left);
  EXPECT_EQ(judged(strip_with({0.1 * limit, 0.5 * limit, 0.07 * limit})).kind, TintKind::none);
}

TEST(JudgeTint, SteeperBlueIsImageStain) {
  TintSigns strip = strip_with({});
  strip.slope = PerChannel<double>{1.0, 1.1, 1.3};
  const Tint tint = judged(strip);
  EXPECT_EQ(tint.kind, TintKind::image_stain);
  expect_covers(*tint.density, 0.3);
  EXPECT_NEAR(tint.density->value, 0.3, 0.04);
}

TEST(JudgeTint, WarmSilverIsNoImageStain) {
  TintSigns strip = strip_with({});
  strip.slope = PerChannel<double>{1.0, 1.01, 1.03};
  EXPECT_EQ(judged(strip).kind, TintKind::none);
}

// Directed light reads silver too dense, so the stain's share of it reads too small; and it
// scatters blue a little more, so some of it may be no stain.
TEST(JudgeTint, AngleOfLightWidensStainUpward) {
  TintSigns strip = strip_with({});
  strip.slope = PerChannel<double>{1.0, 1.1, 1.25};
  TintLimits limits = good_limits();
  const Tint diffuse = judged(strip, limits);
  limits.angle_share_95 = 0.3;
  const Tint directed = judged(strip, limits);
  const double down = *diffuse.density->lower95 - *directed.density->lower95;
  const double up = *directed.density->upper95 - *diffuse.density->upper95;
  EXPECT_GT(down, 0.0);
  EXPECT_LT(down, 0.08);
  EXPECT_GT(up, down);
  // Callier's factor of 1.4 would have made 0.35 of it.
  expect_covers(*directed.density, 0.35);
}

// Callier's factor 1.54 in red and 1.61 in blue (a third of the excess more would be 1.72).
TEST(JudgeTint, ColourOfDirectedLightIsNoStain) {
  TintSigns strip = strip_with({});
  strip.slope = PerChannel<double>{1.0, 1.02, 1.05};
  TintLimits limits = good_limits();
  limits.angle_share_95 = 0.3;
  const Tint tint = judged(strip, limits);
  EXPECT_TRUE(tint.kind != Known<TintKind>(TintKind::image_stain) || tint.confidence < 0.8);
}

TEST(JudgeTint, StrayLightOfOneColourHidesStain) {
  TintSigns strip = strip_with({});
  strip.slope = PerChannel<double>{1.0, 1.02, 1.12};
  TintLimits limits = good_limits();
  EXPECT_EQ(judged(strip, limits).kind, TintKind::image_stain);
  limits.coloured_stray = 0.01;
  EXPECT_NE(judged(strip, limits).kind, TintKind::image_stain);
}

// The mask of colour negative stock: 0.25, 0.6, 0.9 (common practice, no source).
TEST(JudgeTint, MaskedColourStockIsNoStain) {
  const Tint tint = judged(strip_with({0.25, 0.6, 0.9}));
  EXPECT_FALSE(tint.kind);
  EXPECT_EQ(tint.kind.why().kind, Unknown::mask_of_colour_stock);
}

TEST(JudgeTint, ColourOfNoKnownTintIsUnknown) {
  const Tint tint = judged(strip_with({0.0, 0.9, 0.0}));
  EXPECT_FALSE(tint.kind);
  EXPECT_EQ(tint.kind.why().kind, Unknown::colour_of_no_tint);
}

TEST(JudgeTint, TellsTwoVeilsApart) {
  const Tint tint = judged(strip_with({0.08, 0.19, 0.15}, 0.02), known_base());
  ASSERT_EQ(tint.components.size(), 2U);
  EXPECT_EQ(tint.kind, tint.components[0].kind);
  EXPECT_GE(tint.components[0].density.value, tint.components[1].density.value);
  const auto has = [&](TintKind kind) {
    return std::any_of(tint.components.begin(), tint.components.end(),
                       [&](const TintComponent& c) { return c.kind == kind; });
  };
  EXPECT_TRUE(has(TintKind::dye_left));
  EXPECT_TRUE(has(TintKind::fixer_haze));
}

// The strips of a roll share their stock and its tint; a doubtful strip says little.
TEST(JudgeTint, StripsAreWeightedByTheirScatter) {
  TintSigns poor = strip_with({0.0, 0.2, 0.0});
  poor.channel_scatter = 0.1;
  const Tint alone = judged(strip_with({0.0, 0.06, 0.0}), known_base());
  const Tint both = judge_tint({strip_with({0.0, 0.06, 0.0}), poor}, known_base(),
                               shipped_knowledge().scan.tints);
  EXPECT_EQ(both.kind, TintKind::dye_left);
  EXPECT_NEAR(both.density->value, alone.density->value, 0.004);
}

TEST(JudgeTint, NoStripsTellNothing) {
  const Tint tint = judge_tint({}, good_limits(), shipped_knowledge().scan.tints);
  EXPECT_FALSE(tint.kind);
  EXPECT_EQ(tint.kind.why().kind, Unknown::no_clear_colour);
  EXPECT_FALSE(tint.detection_limit.has_value());
}

}  // namespace
}  // namespace fogline
