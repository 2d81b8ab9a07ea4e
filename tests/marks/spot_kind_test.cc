#include "marks/find_spots.h"
#include "tables/shipped_knowledge.h"

#include <gtest/gtest.h>

namespace fogline {
namespace {

const MarkKnowledge& knowledge() {
  return shipped_knowledge().scan.marks;
}

constexpr double clear = 0.3;
constexpr double fine = 47.0;
constexpr SpotGround on_picture{clear, fine, true};
constexpr SpotGround on_rebate{clear, fine, false};
constexpr SpotGround coarse{clear, 12.0, true};

/// A spot such as a textbook shows: round, sharp, alone on grey film.
SpotShape plain_spot(double diameter_mm, double contrast) {
  SpotShape shape;
  shape.diameter_mm = diameter_mm;
  shape.size_mm = diameter_mm;
  shape.contrast = contrast;
  shape.surround_density = 1.0;
  shape.core_density = 1.0 + contrast;
  shape.stands_out = 30.0;
  shape.circularity = 0.99;
  shape.solidity = 0.97;
  shape.even_edge = 1.0;
  shape.edge_mm = 0.03;
  shape.surround_usable = 1.0;
  shape.sigmas = 25.0;
  shape.beyond = 1.0;
  return shape;
}

MarkKind kind_of(const SpotShape& shape, const SpotGround& ground = on_picture) {
  const auto mark = spot_kind(shape, ground, knowledge());
  return mark ? mark->kind : MarkKind::unknown;
}

double odds(const SpotShape& shape, const SpotGround& ground = on_picture) {
  const auto mark = spot_kind(shape, ground, knowledge());
  return mark ? mark->log_odds : -1e6;
}

/// What a change to a spot adds to its log odds.
template <typename Change>
double gain(const SpotShape& shape, const Change& change, const SpotGround& ground = on_picture) {
  SpotShape changed = shape;
  change(changed);
  return odds(changed, ground) - odds(shape, ground);
}

TEST(SpotKind, SignAndSizeTellTheKind) {
  EXPECT_EQ(kind_of(plain_spot(0.2, 0.8)), MarkKind::dust);
  EXPECT_EQ(kind_of(plain_spot(0.15, -0.65)), MarkKind::pinhole);
  EXPECT_EQ(kind_of(plain_spot(0.8, -0.2)), MarkKind::air_bell);
}

// Silver gone over more than a pinhole's breadth is a bell.
TEST(SpotKind, PinholeEndsWhereABellBegins) {
  EXPECT_EQ(kind_of(plain_spot(knowledge().pinhole.most_mm - 0.01, -0.6)), MarkKind::pinhole);
  EXPECT_EQ(kind_of(plain_spot(knowledge().bell.size.least_mm + 0.05, -0.6)), MarkKind::air_bell);
}

TEST(SpotKind, SizesBeyondAKindAreNone) {
  EXPECT_EQ(kind_of(plain_spot(knowledge().dust.size.least_mm - 0.01, 0.8)), MarkKind::unknown);
  EXPECT_EQ(kind_of(plain_spot(knowledge().dust.size.most_mm + 0.01, 0.8)), MarkKind::unknown);
  EXPECT_EQ(kind_of(plain_spot(knowledge().bell.size.most_mm + 0.1, -0.2)), MarkKind::unknown);
}

TEST(SpotKind, FaintSpotsAreNone) {
  EXPECT_EQ(kind_of(plain_spot(0.2, knowledge().dust.least_contrast - 0.01)), MarkKind::unknown);
  EXPECT_EQ(kind_of(plain_spot(0.8, -knowledge().bell.least_contrast + 0.01)), MarkKind::unknown);
  EXPECT_EQ(kind_of(plain_spot(0.8, 0.0)), MarkKind::unknown);
}

// A bell takes silver away: where there is none, or more than there was is gone, it is no bell.
TEST(SpotKind, BellNeedsSilverToTake) {
  SpotShape on_clear = plain_spot(0.8, -0.2);
  on_clear.surround_density = clear + 0.02;
  EXPECT_EQ(kind_of(on_clear), MarkKind::unknown);
  EXPECT_EQ(kind_of(plain_spot(0.8, -1.0)), MarkKind::unknown);
}

TEST(SpotKind, BellIsRound) {
  SpotShape oval = plain_spot(0.8, -0.2);
  oval.circularity = 0.9;
  EXPECT_EQ(kind_of(oval), MarkKind::unknown);
  SpotShape dented = plain_spot(0.8, -0.2);
  dented.solidity = 0.8;
  EXPECT_EQ(kind_of(dented), MarkKind::unknown);
}

TEST(SpotKind, ColouredSpotIsNoMark) {
  for (const SpotShape& plain :
       {plain_spot(0.2, 0.8), plain_spot(0.15, -0.65), plain_spot(0.8, -0.2)}) {
    SpotShape coloured = plain;
    coloured.colour_spread = knowledge().spot.most_colour + 0.01;
    EXPECT_EQ(kind_of(coloured), MarkKind::unknown);
  }
}

TEST(SpotKind, CoarseScansTellLargeBellsOnly) {
  EXPECT_EQ(kind_of(plain_spot(0.3, 0.8), coarse), MarkKind::unknown);
  EXPECT_EQ(kind_of(plain_spot(0.2, -0.65), coarse), MarkKind::unknown);
  EXPECT_EQ(kind_of(plain_spot(knowledge().bell.least_coarse_mm - 0.1, -0.2), coarse),
            MarkKind::unknown);
  EXPECT_EQ(kind_of(plain_spot(knowledge().bell.least_coarse_mm + 0.1, -0.2), coarse),
            MarkKind::air_bell);
}

// What speaks for one kind speaks for each: standing out, an even edge, no colour.
TEST(SpotKind, CommonSignsWeighTheRightWay) {
  for (const SpotShape& plain :
       {plain_spot(0.2, 0.8), plain_spot(0.15, -0.65), plain_spot(0.8, -0.2)}) {
    EXPECT_GT(gain(plain, [](SpotShape& s) { s.stands_out *= 2.0; }), 0.0);
    EXPECT_LT(gain(plain, [](SpotShape& s) { s.even_edge = 0.7; }), 0.0);
    EXPECT_LT(gain(plain, [](SpotShape& s) { s.colour_spread = 0.34; }), 0.0);
  }
}

TEST(SpotKind, DustIsOpaqueAndSharp) {
  const SpotShape dust = plain_spot(0.2, 0.8);
  EXPECT_GT(gain(dust, [](SpotShape& s) { s.contrast = 1.6; }), 0.0);
  EXPECT_LT(gain(dust, [](SpotShape& s) { s.edge_mm = 0.15; }), 0.0);
  // An edge as sharp as the pixels allow is no sharper than sharp.
  EXPECT_EQ(gain(dust, [](SpotShape& s) { s.edge_mm = 0.02; }), 0.0);
}

// A picture has specks of its own; film that is surely unexposed hasn't.
TEST(SpotKind, PicturesAskMoreOfDust) {
  const SpotShape dust = plain_spot(0.2, 0.8);
  const auto in_range = [](SpotShape& s) { s.beyond = 0.0; };
  const auto in_crowd = [](SpotShape& s) { s.crowd = 20; };
  EXPECT_LT(gain(dust, in_range), 0.0);
  EXPECT_LT(gain(dust, in_crowd), 0.0);
  EXPECT_EQ(gain(dust, in_range, on_rebate), 0.0);
  EXPECT_EQ(gain(dust, in_crowd, on_rebate), 0.0);
}

TEST(SpotKind, PinholeIsSurerTheDeeper) {
  EXPECT_GT(odds(plain_spot(0.15, -0.68)), odds(plain_spot(0.15, -0.4)));
}

TEST(SpotKind, BellAmongItsLikeOrDownToClearIsDoubted) {
  const SpotShape bell = plain_spot(0.8, -0.2);
  EXPECT_LT(gain(bell, [](SpotShape& s) { s.crowd = 5; }), 0.0);
  EXPECT_LT(gain(bell, [](SpotShape& s) { s.contrast = -0.69; }), 0.0);
  EXPECT_LT(gain(bell, [](SpotShape& s) { s.circularity = 0.975; }), 0.0);
}

}  // namespace
}  // namespace fogline
