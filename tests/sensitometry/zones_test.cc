#include "sensitometry/zones.h"

#include "reference_curves.h"
#include "sensitometry/curve_constructions.h"
#include "sensitometry/developed_to.h"

#include <fogline/sensitometry/sensitometry.h>

#include <array>

#include <gtest/gtest.h>

namespace fogline {
namespace {

/// A curve told without doubt.
FittedCurve sure_curve(const std::function<double(double)>& film, double begin, double end) {
  FittedCurve curve;
  curve.mean = table_of(film, begin - 0.5, end + 0.5, 0.01);
  curve.doubt.assign(curve.mean.net_density.size(), 0.0);
  curve.draws.assign(5, curve.mean);
  curve.begin_log_h = begin;
  curve.end_log_h = curve.sure_end_log_h = end;
  return curve;
}

// A measured set of zone densities (tabular-grain film for a condenser enlarger, a student's test
// tabulated on a photography page, 1991): read back from the curve through them.
TEST(Zones, ReadATableOfZoneDensitiesBack) {
  constexpr std::array table{0.02, 0.11, 0.21, 0.34, 0.48, 0.62, 0.76, 0.97, 1.18, 1.33, 1.44};
  const auto film = [&](double log_h) {
    const double zone = log_h / stop_log_h + metered_zone;
    const auto below = static_cast<std::size_t>(std::clamp(zone, 0.0, 9.0));
    const double share = std::clamp(zone - static_cast<double>(below), 0.0, 1.0);
    return table[below] + share * (table[below + 1] - table[below]);
  };
  const ZonePlacement placement = place_zones(sure_curve(film, -1.6, 1.6), 0.0, 400.0);
  for (const ZoneDensity& zone : placement.zones) {
    ASSERT_TRUE(zone.net_density) << zone.zone;
    EXPECT_NEAR(zone.net_density->value, table[static_cast<std::size_t>(zone.zone)], 0.003);
  }
  ASSERT_TRUE(placement.density_range);
  EXPECT_NEAR(placement.density_range->value, 1.18 - 0.11, 0.003);
  // The speed point lies a ninth of the way from Zone I to Zone 0.
  EXPECT_NEAR(placement.exposure_index->value, 400.0 * std::exp2(1.0 / 9.0), 2.0);
}

TEST(Zones, AStopOfSpeedIsAFactorOfTwo) {
  const SoftToe film{0.15, 4.2, -1.2};
  const auto index_of = [&](double shift_stops) {
    const auto shifted = [&](double x) { return film(x - shift_stops * stop_log_h); };
    return place_zones(sure_curve(shifted, -2.5, 1.5), 0.0, 100.0).exposure_index->value;
  };
  EXPECT_NEAR(index_of(0.0) / index_of(1.0), 2.0, 0.02);
}

TEST(Zones, WithoutAMeterZoneILiesOnTheSpeedPoint) {
  const ZonePlacement placement =
      place_zones(sure_curve(SoftToe{0.15, 4.2, -2.0}, -3.0, 1.0), std::nullopt, 400.0);
  EXPECT_FALSE(placement.metered);
  EXPECT_NEAR(placement.zones[1].net_density->value, speed_point_density, 0.002);
  EXPECT_FALSE(placement.exposure_index);
  EXPECT_EQ(placement.exposure_index.why().kind, Unknown::curve_not_metered);
}

TEST(Zones, BeyondTheExposuresAreAbsentWithTheReason) {
  const ZonePlacement placement =
      place_zones(sure_curve(SoftToe{0.15, 4.2, -1.0}, -1.0, 0.6), 0.0, 400.0);
  EXPECT_FALSE(placement.zones[10].net_density);
  EXPECT_EQ(placement.zones[10].net_density.why().kind, Unknown::needs_more_exposure);
}

TEST(UsefulRange, EndsInTheShoulderOrIsALowerBound) {
  const auto shouldered = [](double x) {
    const double line = SoftToe{0.12, 6.0, -2.0}(x);
    return line / std::pow(1.0 + std::pow(line / 1.5, 6.0), 1.0 / 6.0);
  };
  const CurveReading whole = useful_range(sure_curve(shouldered, -3.0, 2.0));
  ASSERT_TRUE(whole);
  EXPECT_FALSE(whole->at_least);
  const CurveReading part = useful_range(sure_curve(SoftToe{0.12, 6.0, -2.0}, -3.0, 0.5));
  ASSERT_TRUE(part);
  EXPECT_TRUE(part->at_least);
}

// Every density grows in one proportion and the inertia point stays (Sheppard & Mees 1907).
TEST(DevelopedTo, GivesTheWishedIndexFromTheSameInertiaPoint) {
  const CurveTable now = table_of(SoftToe{0.10, 4.5, -2.0}, -4.0, 2.0, 0.01);
  const auto wished = developed_to(now, 0.58);
  ASSERT_TRUE(wished);
  EXPECT_NEAR(two_arcs(*wished)->contrast_index, 0.58, 1e-3);
  const double proportion = wished->net_density[400] / now.net_density[400];
  EXPECT_NEAR(wished->net_density[550] / now.net_density[550], proportion, 1e-9);
}

}  // namespace
}  // namespace fogline
