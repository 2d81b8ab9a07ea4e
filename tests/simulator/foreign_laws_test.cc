#include "simulator/finished_picture.h"
#include "simulator/foreign_callier.h"
#include "simulator/lamp_fall_off.h"
#include "simulator/lens_halo.h"
#include "simulator/mask_shade.h"

#include <algorithm>
#include <cmath>

#include <gtest/gtest.h>

namespace filmsim {
namespace {

TEST(ForeignCallier, EveryLawRisesAndReadsSilverDenser) {
  for (const CallierLaw law : {CallierLaw::kHyperbola, CallierLaw::kCreep, CallierLaw::kHump}) {
    for (const double knee : {0.1, 1.0}) {
      const ForeignCallier callier{law, {0.6, 0.6, 0.6}, knee, true};
      float previous = -1.0F;
      for (float net = 0.0F; net < 3.5F; net += 0.01F) {
        const float seen = seen_silver(net, 0.1, callier, 1);
        EXPECT_GT(seen, previous);
        EXPECT_GE(seen, net);
        previous = seen;
      }
    }
  }
}

// The hyperbola at its knee has half of its excess: 0.3 of silver reads 0.3 (1 + 0.4 / 2).
TEST(ForeignCallier, FogCountsOnlyWhereItScatters) {
  ForeignCallier callier{CallierLaw::kHyperbola, {0.4, 0.4, 0.4}, 0.3, false};
  EXPECT_NEAR(seen_silver(0.3F, 0.3, callier, 0), 0.36F, 1e-5F);
  EXPECT_NEAR(seen_silver(0.0F, 0.3, callier, 0), 0.0F, 1e-6F);
  callier.fog_scatters = true;
  EXPECT_NEAR(seen_silver(0.0F, 0.3, callier, 0), 0.06F, 1e-5F);
}

TEST(LampFallOff, FurthestCornerHasTheWholeRatio) {
  LampFallOff lamp;
  lamp.ratio = 4.0;
  lamp.middle = {0.1, -0.2};
  lamp.aspect = 1.7;
  EXPECT_NEAR(lamp_light(lamp, 0.1, -0.2, 0), 1.0, 1e-9);
  EXPECT_NEAR(lamp_light(lamp, -0.5, 0.5, 0), 0.25, 1e-9);
  std::vector<Plane> light(3, Plane(300, 200, 1.0F));
  light_by_lamp(light, lamp);
  EXPECT_NEAR(light[1].at(0, 199), lamp_light(lamp, -0.4983, 0.4975, 1), 0.002);
  EXPECT_NEAR(light[1].at(210, 40), lamp_light(lamp, 0.2017, -0.2975, 1), 0.002);
}

TEST(MaskShade, TakesItsShareAtTheEdgeAndNothingFarAway) {
  Plane open(400, 400, 0.0F);
  for (int y = 0; y < 400; ++y) std::fill(open.row(y) + 200, open.row(y) + 400, 1.0F);
  Plane light(400, 400, 1.0F);
  shade_by_mask(light, open, {0.2, 2.0}, 10.0);
  EXPECT_NEAR(light.at(200, 200), 0.8F, 0.01F);
  EXPECT_GT(light.at(225, 200), light.at(205, 200));
  EXPECT_NEAR(light.at(390, 200), 1.0F, 0.002F);
}

double spread_at(const LensHalo& halo, int away_px) {
  Plane light(801, 801, 0.0F);
  for (int y = 398; y < 403; ++y) std::fill_n(light.row(y) + 398, 5, 1.0F);
  add_halo(light, halo, 10.0);
  return light.at(400 + away_px, 400);
}

TEST(LensHalo, LeavesAnEvenFieldAlone) {
  Plane light(120, 90, 0.42F);
  add_halo(light, {0.2, 1.5, 0.5}, 8.0);
  for (const float value : light.values) EXPECT_NEAR(value, 0.42F, 1e-5F);
}

// A Gaussian of 1 mm would have exp(-72) of its core's light 12 mm away; a tail of power -(2 + 0.8)
// keeps about 12^-2.8 = 0.001 of it.
TEST(LensHalo, ItsTailFallsAsAPowerOfDistance) {
  const LensHalo halo{0.2, 1.0, 0.8};
  const double fall = spread_at(halo, 120) / spread_at(halo, 60);
  EXPECT_NEAR(std::log2(fall), -2.8, 0.5);
  const LensHalo light_tail{0.2, 1.0, 1.5};
  EXPECT_LT(spread_at(light_tail, 120), 0.5 * spread_at(halo, 120));
}

TEST(FinishedPicture, ToneCurveRisesBetweenItsEnds) {
  FinishedPicture picture;
  picture.black_level = 0.05;
  picture.white_level = 0.95;
  picture.s_curve = 0.7;
  picture.roll_off = 1.2;
  picture.toe_lift = 0.06;
  EXPECT_NEAR(finished_level(0.03, picture), 0.06, 1e-9);
  EXPECT_NEAR(finished_level(0.97, picture), 1.0, 1e-9);
  double previous = 0.0;
  for (double level = 0.06; level < 0.95; level += 0.01) {
    EXPECT_GT(finished_level(level, picture), previous);
    previous = finished_level(level, picture);
  }
}

TEST(FinishedPicture, DoesNothingWhereNothingIsAsked) {
  std::vector<Plane> signal(3, Plane(40, 30, 0.3F));
  signal[2].at(7, 8) = 0.05F;
  const std::vector<Plane> before = signal;
  finish(signal, {}, 10.0);
  for (std::size_t i = 0; i < signal[2].values.size(); ++i) {
    EXPECT_NEAR(signal[2].values[i], before[2].values[i], 1e-4F);
  }
}

TEST(FinishedPicture, SharpeningDrawsHalosAlongEdges) {
  std::vector<Plane> signal(3, Plane(60, 20, 0.2F));
  for (Plane& plane : signal) {
    for (int y = 0; y < plane.height; ++y) std::fill(plane.row(y) + 30, plane.row(y) + 60, 0.5F);
  }
  FinishedPicture picture;
  picture.sharpening = 1.0;
  finish(signal, picture, 10.0);
  EXPECT_GT(signal[1].at(30, 10), 0.55F);
  EXPECT_LT(signal[1].at(29, 10), 0.17F);
  EXPECT_NEAR(signal[1].at(50, 10), 0.5F, 0.002F);
}

TEST(FinishedPicture, SaturationCutsTheWeakChannelOfANarrowLamp) {
  std::vector<Plane> signal = {Plane(8, 8, 0.8F), Plane(8, 8, 0.6F), Plane(8, 8, 0.02F)};
  FinishedPicture picture;
  picture.saturation = 1.3;
  finish(signal, picture, 10.0);
  EXPECT_EQ(signal[2].at(4, 4), 0.0F);
}

}  // namespace
}  // namespace filmsim
