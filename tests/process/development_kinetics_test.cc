#include "process/belief/development_kinetics.h"

#include <array>
#include <cmath>

#include <gtest/gtest.h>

namespace fogline {
namespace {

// Plain arithmetic of the first-order law (Sheppard & Mees 1907) with a start time (Nietz 1922),
// worked out outside this program.
struct TableRow {
  DevelopmentCurve curve;
  std::array<double, 6> contrast;
  std::array<double, 3> minutes;
};
constexpr std::array<double, 6> table_minutes{5.0, 6.0, 7.0, 8.0, 10.0, 12.0};
constexpr std::array<double, 3> table_contrasts{0.50, 0.58, 0.70};
constexpr std::array<TableRow, 3> table{{
    {{1.20, 0.080, 0.0}, {.3956, .4575, .5145, .5672, .6608, .7405}, {6.737, 8.254, 10.943}},
    {{1.00, 0.100, 0.5}, {.3624, .4231, .4780, .5276, .6133, .6834}, {7.431, 9.175, 12.540}},
    {{0.90, 0.120, 1.0}, {.3431, .4061, .4619, .5115, .5944, .6596}, {7.758, 9.617, 13.534}},
}};

TEST(DevelopmentKinetics, GrowsAsTabulated) {
  for (const TableRow& row : table) {
    for (std::size_t i = 0; i < table_minutes.size(); ++i) {
      EXPECT_NEAR(contrast_after(row.curve, table_minutes[i]), row.contrast[i], 1e-4);
    }
  }
}

TEST(DevelopmentKinetics, TimesAsTabulated) {
  for (const TableRow& row : table) {
    for (std::size_t i = 0; i < table_contrasts.size(); ++i) {
      const auto minutes = minutes_for_contrast(row.curve, table_contrasts[i]);
      ASSERT_TRUE(minutes);
      EXPECT_NEAR(*minutes, row.minutes[i], 1e-3);
    }
  }
}

TEST(DevelopmentKinetics, LimitIsNeverReached) {
  const DevelopmentCurve curve{0.6, 0.1, 0.0};
  EXPECT_FALSE(minutes_for_contrast(curve, 0.6));
  EXPECT_FALSE(minutes_for_contrast(curve, 0.7));
  EXPECT_LT(contrast_after(curve, 100.0), 0.6);
}

TEST(DevelopmentKinetics, NothingBeforeTheStart) {
  const DevelopmentCurve curve{1.0, 0.1, 0.8};
  EXPECT_EQ(contrast_after(curve, 0.5), 0.0);
  EXPECT_EQ(contrast_after(curve, 0.8), 0.0);
  EXPECT_GT(contrast_after(curve, 0.9), 0.0);
}

// Sheppard & Mees 1907: 0.45 and 0.70 after 5 and 10 minutes.
TEST(DevelopmentKinetics, TwoTimesGiveTheCurve) {
  const auto curve = curve_from_doubled_time(5.0, 0.45, 0.70);
  ASSERT_TRUE(curve);
  EXPECT_NEAR(curve->rate_per_min, 0.117557, 1e-5);
  EXPECT_NEAR(curve->contrast_limit, 1.01250, 1e-5);
  EXPECT_NEAR(contrast_after(*curve, 5.0), 0.45, 1e-12);
  EXPECT_NEAR(contrast_after(*curve, 10.0), 0.70, 1e-12);
}

TEST(DevelopmentKinetics, NoCurveWithoutALimit) {
  EXPECT_FALSE(curve_from_doubled_time(5.0, 0.3, 0.6));
  EXPECT_FALSE(curve_from_doubled_time(5.0, 0.3, 0.7));
  EXPECT_FALSE(curve_from_doubled_time(5.0, 0.5, 0.5));
  EXPECT_FALSE(curve_from_doubled_time(5.0, 0.5, 0.4));
}

// Time factors against 20 degrees: powers of the factor for 10 degrees (2 to 3: Sheppard & Mees).
TEST(DevelopmentKinetics, TimesFollowTemperature) {
  struct Row {
    double q10;
    std::array<double, 6> time_factor;
  };
  constexpr std::array<double, 6> degrees{18.0, 19.0, 21.0, 22.0, 24.0, 26.0};
  constexpr std::array<Row, 4> rows{{{2.0, {1.149, 1.072, .933, .871, .758, .660}},
                                     {2.25, {1.176, 1.084, .922, .850, .723, .615}},
                                     {2.5, {1.201, 1.096, .912, .833, .693, .577}},
                                     {2.8, {1.229, 1.108, .902, .814, .662, .539}}}};
  for (const Row& row : rows) {
    for (std::size_t i = 0; i < degrees.size(); ++i) {
      EXPECT_NEAR(1.0 / rate_factor(row.q10, 20.0, degrees[i]), row.time_factor[i], 1e-3);
    }
    EXPECT_EQ(rate_factor(row.q10, 20.0, 20.0), 1.0);
  }
}

// Ratios of contrast are those of the subject's zones; times of limit 1.20, rate 0.080 by the law.
TEST(DevelopmentKinetics, ZonesAskForTimes) {
  struct Row {
    double zones_ratio;
    double time_ratio;
  };
  const DevelopmentCurve curve{1.20, 0.080, 0.0};
  const double normal_min = *minutes_for_contrast(curve, 0.58);
  EXPECT_NEAR(normal_min, 8.25, 0.01);
  for (const Row row : {Row{7.0 / 6.0, 1.257}, Row{7.0 / 8.0, 0.833}, Row{7.0 / 5.0, 1.710},
                        Row{7.0 / 9.0, 0.714}}) {
    const auto minutes = minutes_for_contrast(curve, 0.58 * row.zones_ratio);
    ASSERT_TRUE(minutes);
    EXPECT_NEAR(*minutes / normal_min, row.time_ratio, 0.005 * row.time_ratio);
  }
}

TEST(DevelopmentKinetics, DoubledRateHalvesTheTime) {
  for (const TableRow& row : table) {
    DevelopmentCurve fast = row.curve;
    fast.rate_per_min *= 2.0;
    const double slow_min = *minutes_for_contrast(row.curve, 0.58) - row.curve.start_min;
    const double fast_min = *minutes_for_contrast(fast, 0.58) - row.curve.start_min;
    EXPECT_NEAR(fast_min, 0.5 * slow_min, 1e-12);
  }
}

TEST(DevelopmentKinetics, TimeAndContrastAreInverse) {
  for (const TableRow& row : table) {
    for (double contrast = 0.05; contrast < 0.85; contrast += 0.05) {
      const double minutes = *minutes_for_contrast(row.curve, contrast);
      EXPECT_NEAR(contrast_after(row.curve, minutes), contrast, 1e-12);
    }
  }
}

}  // namespace
}  // namespace fogline
