#include "reference_curves.h"
#include "sensitometry/curve_constructions.h"

#include <fogline/sensitometry/sensitometry.h>

#include <gtest/gtest.h>

namespace fogline {
namespace {

struct Row {
  int arithmetic, degrees;
  double log_h;
};

// ISO 6:1993 and ISO 5800 (values from memory): S = 0.80 / H_m, rounded to tenths of log H.
class SpeedTable : public testing::TestWithParam<Row> {};

TEST_P(SpeedTable, RoundsTheMiddleOfEveryRow) {
  for (const double off : {0.0, -0.035, 0.035}) {
    const auto number = iso_speed_number(GetParam().log_h + off);
    ASSERT_TRUE(number);
    EXPECT_EQ(number->arithmetic, GetParam().arithmetic);
    EXPECT_EQ(number->degrees, GetParam().degrees);
  }
}

INSTANTIATE_TEST_SUITE_P(
    Rows, SpeedTable,
    testing::Values(Row{3200, 36, -3.597}, Row{2500, 35, -3.497}, Row{2000, 34, -3.397},
                    Row{1600, 33, -3.297}, Row{1250, 32, -3.197}, Row{1000, 31, -3.097},
                    Row{800, 30, -2.997}, Row{640, 29, -2.897}, Row{500, 28, -2.797},
                    Row{400, 27, -2.697}, Row{320, 26, -2.597}, Row{250, 25, -2.497},
                    Row{200, 24, -2.397}, Row{160, 23, -2.297}, Row{125, 22, -2.197},
                    Row{100, 21, -2.097}, Row{80, 20, -1.997}, Row{64, 19, -1.897},
                    Row{50, 18, -1.797}, Row{40, 17, -1.697}, Row{32, 16, -1.597},
                    Row{25, 15, -1.497}, Row{20, 14, -1.397}, Row{16, 13, -1.297},
                    Row{12, 12, -1.197}, Row{10, 11, -1.097}, Row{8, 10, -0.997}, Row{6, 9, -0.897},
                    Row{5, 8, -0.797}, Row{4, 7, -0.697}));

TEST(SpeedNumber, IsKnownAtPlainExposures) {
  EXPECT_EQ(iso_speed_number(std::log10(0.0020))->arithmetic, 400);
  EXPECT_EQ(iso_speed_number(std::log10(0.0064))->arithmetic, 125);
  EXPECT_EQ(iso_speed_number(std::log10(0.0250))->arithmetic, 32);
  EXPECT_FALSE(iso_speed_number(-5.0));
  EXPECT_FALSE(iso_speed_number(1.0));
}

/// A curve through the speed point that gains `gain` over 1.30, told without doubt.
FittedCurve curve_of(double speed_point_log_h, double gain) {
  FittedCurve curve;
  const double slope = gain / iso_triangle_log_h;
  curve.mean = table_of(
      [=](double x) {
        return std::max(0.0, speed_point_density + slope * (x - speed_point_log_h));
      },
      speed_point_log_h - 1.0, speed_point_log_h + 3.0, 0.02);
  curve.doubt.assign(curve.mean.net_density.size(), 0.0);
  curve.draws.assign(10, curve.mean);
  curve.begin_log_h = curve.mean.begin_log_h;
  curve.end_log_h = curve.sure_end_log_h = curve.mean.end_log_h();
  return curve;
}

IsoSpeed speed_of(double speed_point_log_h, double gain, bool absolute) {
  const FittedCurve curve = curve_of(speed_point_log_h, gain);
  return read_iso_speed(curve, read_curve(curve), absolute);
}

// Points (-2.10, 0.10) and (-0.80, 0.90): H_m 0.007943 lux s, 0.80 / H_m = 100.7.
TEST(IsoSpeed, IsToldWhereTheTriangleIsMet) {
  const IsoSpeed iso = speed_of(-2.10, 0.80, true);
  EXPECT_EQ(iso.triangle, TriangleState::met);
  ASSERT_TRUE(iso.number);
  EXPECT_EQ(iso.number->arithmetic, 100);
  EXPECT_EQ(iso.number->degrees, 21);
  EXPECT_NEAR(iso.speed->value, 100.7, 0.3);
  EXPECT_NEAR(iso.effective_speed->value, 100.7, 0.5);
}

TEST(IsoSpeed, IsNoIsoSpeedOutsideTheTriangle) {
  const IsoSpeed iso = speed_of(-2.10, 0.70, true);
  EXPECT_EQ(iso.triangle, TriangleState::not_met);
  EXPECT_FALSE(iso.number);
  EXPECT_FALSE(iso.speed);
  EXPECT_EQ(iso.speed.why().kind, Unknown::triangle_not_met);
}

TEST(IsoSpeed, NeedsAnAbsoluteExposure) {
  const IsoSpeed iso = speed_of(-2.10, 0.80, false);
  EXPECT_EQ(iso.triangle, TriangleState::met);
  EXPECT_FALSE(iso.speed);
  EXPECT_FALSE(iso.number);
  EXPECT_EQ(iso.speed.why().kind, Unknown::exposures_relative);
}

// Less contrast at the same speed point: the fractional gradient lies further down (Delta-X factors
// 1.46, 1.27, 1.12, 0.90, 0.82; computed from the formula).
TEST(EffectiveSpeed, RisesAsContrastFalls) {
  const double normal = speed_of(-2.10, 0.80, true).effective_speed->value;
  EXPECT_NEAR(speed_of(-2.10, 0.50, true).effective_speed->value / normal, 1.46, 0.01);
  EXPECT_NEAR(speed_of(-2.10, 0.60, true).effective_speed->value / normal, 1.27, 0.01);
  EXPECT_NEAR(speed_of(-2.10, 0.70, true).effective_speed->value / normal, 1.12, 0.01);
  EXPECT_NEAR(speed_of(-2.10, 0.90, true).effective_speed->value / normal, 0.90, 0.01);
  EXPECT_NEAR(speed_of(-2.10, 1.00, true).effective_speed->value / normal, 0.82, 0.01);
}

}  // namespace
}  // namespace fogline
