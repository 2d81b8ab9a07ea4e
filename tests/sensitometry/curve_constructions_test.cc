#include "sensitometry/curve_constructions.h"

#include "reference_curves.h"

#include <array>

#include <gtest/gtest.h>

namespace fogline {
namespace {

class StraightCurve : public testing::TestWithParam<double> {};

// From the fog line on: every gradient is the line's slope (geometry, exact).
TEST_P(StraightCurve, GivesItsSlopeByEveryConstruction) {
  const double slope = GetParam();
  const CurveTable line =
      table_of([&](double x) { return std::max(0.0, slope * (x + 2.0)); }, -4.0, 2.0);
  ASSERT_TRUE(two_arcs(line));
  EXPECT_NEAR(two_arcs(line)->contrast_index, slope, 0.002);
  EXPECT_NEAR(two_arcs(line)->centre_log_h, -2.0, 0.01);
  for (const double range : {1.30, 1.50, 1.80, 2.107}) {
    EXPECT_NEAR(*average_gradient(line, range), slope, 0.002);
  }
  EXPECT_NEAR(straight_line(line, -4.0, 2.0)->gamma, slope, 0.002);
}

INSTANTIATE_TEST_SUITE_P(Slopes, StraightCurve, testing::Values(0.3, 0.45, 0.6, 0.8, 1.0, 1.2));

struct KnownCurve {
  SoftToe curve;
  double gamma, log_h_m, gain, gradient, contrast_index, centre;
};

// Smooth curves with numbers computed once by their makers' own construction; regression values,
// not taken from a book.
class SmoothCurve : public testing::TestWithParam<KnownCurve> {};

TEST_P(SmoothCurve, GivesItsKnownNumbers) {
  const KnownCurve& known = GetParam();
  const CurveTable table = table_of(known.curve, -5.0, 2.0);
  const auto arcs = two_arcs(table);
  ASSERT_TRUE(arcs);
  EXPECT_NEAR(arcs->contrast_index, known.contrast_index, 0.003);
  EXPECT_NEAR(arcs->centre_log_h, known.centre, 0.003);
  EXPECT_NEAR(*average_gradient(table, 1.50), known.gradient, 0.003);
  EXPECT_NEAR(table.log_h_at(speed_point_density), known.log_h_m, 0.003);
  EXPECT_NEAR(*average_gradient(table, 1.30) * 1.30, known.gain, 0.003);
  EXPECT_NEAR(straight_line(table, -5.0, 2.0)->gamma, known.gamma, 0.005);
}

TEST_P(SmoothCurve, KeepsItsContrastIndexWhereverItLies) {
  const KnownCurve& known = GetParam();
  CurveTable table = table_of(known.curve, -5.0, 2.0);
  const double index = two_arcs(table)->contrast_index;
  table.begin_log_h += 1.7;
  EXPECT_NEAR(two_arcs(table)->contrast_index, index, 1e-9);
}

INSTANTIATE_TEST_SUITE_P(
    Curves, SmoothCurve,
    testing::Values(KnownCurve{{0.15, 4.2, -2.0}, 0.630, -2.0128, 0.7116, 0.5582, 0.5671, -2.1911},
                    KnownCurve{{0.10, 5.5, -2.2}, 0.550, -2.1016, 0.6692, 0.5194, 0.5215, -2.3010},
                    KnownCurve{{0.22, 3.6, -1.9}, 0.792, -2.0535, 0.8115, 0.6454, 0.6702, -2.1820},
                    KnownCurve{
                        {0.12, 6.0, -2.1}, 0.720, -2.0561, 0.8676, 0.6744, 0.6840, -2.1907}));

struct Crossing {
  double index, inner_density, inner_log_h, outer_density, outer_log_h;
};

// Geometry of the two arcs (Niederpruem, Nelson & Yule 1966): net densities and distances from the
// centre at the crossings follow from the index alone.
class ArcCrossing : public testing::TestWithParam<Crossing> {};

TEST_P(ArcCrossing, LiesWhereGeometryPutsIt) {
  const Crossing& known = GetParam();
  const CurveTable line =
      table_of([&](double x) { return std::max(0.0, known.index * x); }, -1.0, 3.0);
  const auto arcs = two_arcs(line);
  ASSERT_TRUE(arcs);
  EXPECT_NEAR(arcs->contrast_index, known.index, 5e-4);
  EXPECT_NEAR(arcs->inner_log_h - arcs->centre_log_h, known.inner_log_h, 5e-4);
  EXPECT_NEAR(arcs->outer_log_h - arcs->centre_log_h, known.outer_log_h, 5e-4);
  EXPECT_NEAR(line.density_at(arcs->inner_log_h), known.inner_density, 0.002);
  EXPECT_NEAR(line.density_at(arcs->outer_log_h), known.outer_density, 0.002);
}

INSTANTIATE_TEST_SUITE_P(Table, ArcCrossing,
                         testing::Values(Crossing{0.45, 0.0821, 0.1824, 0.9028, 2.0062},
                                         Crossing{0.50, 0.0894, 0.1789, 0.9839, 1.9677},
                                         Crossing{0.56, 0.0977, 0.1745, 1.0749, 1.9195},
                                         Crossing{0.58, 0.1003, 0.1730, 1.1038, 1.9031},
                                         Crossing{0.60, 0.1029, 0.1715, 1.1319, 1.8865},
                                         Crossing{0.62, 0.1054, 0.1700, 1.1593, 1.8698},
                                         Crossing{0.70, 0.1147, 0.1638, 1.2616, 1.8023},
                                         Crossing{0.80, 0.1249, 0.1562, 1.3743, 1.7179}));

TEST(TwoArcs, NeedTheCurveToReachTheOuterArc) {
  EXPECT_FALSE(two_arcs(table_of(SoftToe{0.15, 4.2, -2.0}, -5.0, -0.6)));
  EXPECT_FALSE(two_arcs(table_of([](double) { return 0.05; }, -3.0, 3.0)));
}

// Delta-X (Nelson & Simonds 1956; formula and table from memory, 0.296 at 0.80 confirmed by a text
// on the criterion).
TEST(DeltaX, FollowsItsTable) {
  constexpr std::array<std::array<double, 2>, 13> table{{{0.40, 0.5244},
                                                         {0.50, 0.4600},
                                                         {0.60, 0.4004},
                                                         {0.65, 0.3724},
                                                         {0.70, 0.3456},
                                                         {0.75, 0.3200},
                                                         {0.80, 0.2956},
                                                         {0.85, 0.2724},
                                                         {0.90, 0.2504},
                                                         {0.95, 0.2296},
                                                         {1.00, 0.2100},
                                                         {1.10, 0.1744},
                                                         {1.20, 0.1436}}};
  for (const auto& [gain, distance] : table) {
    EXPECT_NEAR(delta_x(gain), distance, 5e-5) << gain;
  }
}

// By its definition (Jones 1939): the slope there is 0.3 of the mean slope over 1.50 to its right.
TEST(FractionalGradient, MeetsItsDefinition) {
  for (const SoftToe& curve : {SoftToe{0.15, 4.2, -2.0}, SoftToe{0.12, 6.0, -2.1}}) {
    const auto at = fractional_gradient_point(table_of(curve, -5.0, 2.0));
    ASSERT_TRUE(at);
    constexpr double h = 1e-4;
    const double slope = (curve(*at + h) - curve(*at - h)) / (2.0 * h);
    EXPECT_NEAR(slope / ((curve(*at + 1.5) - curve(*at)) / 1.5), 0.3, 0.01);
  }
}

TEST(StraightLine, EndsWhereTheShoulderBegins) {
  const CurveTable table =
      table_of([](double x) { return x < 0.0   ? 0.0
                                     : x < 1.5 ? 0.6 * x
                                               : 0.9 + 0.3 * (x - 1.5); },
               -1.0, 3.0);
  const auto line = straight_line(table, -1.0, 3.0);
  ASSERT_TRUE(line);
  EXPECT_NEAR(line->gamma, 0.6, 0.005);
  EXPECT_NEAR(line->end_log_h, 1.5, 0.08);
  EXPECT_NEAR(line->begin_log_h, 0.0, 0.08);
}

TEST(CurveTable, InvertsItself) {
  const CurveTable table = table_of(SoftToe{0.15, 4.2, -2.0}, -4.0, 1.0);
  for (const double density : {0.05, 0.1, 0.5, 1.2}) {
    EXPECT_NEAR(table.density_at(table.log_h_at(density)), density, 1e-9);
  }
  EXPECT_EQ(table.log_h_at(9.0), INFINITY);
}

}  // namespace
}  // namespace fogline
