#include "simulator/film_curve.h"

#include <cmath>

#include <gtest/gtest.h>

namespace filmsim {
namespace {

// Curves D = a ln(1 + e^(b (x - x0))) whose figures were worked out independently of this code.
struct SoftLine {
  double a, b, x0;
  double speed_point, average_gradient, contrast_index, centre;
};

class ReferenceCurve : public testing::TestWithParam<SoftLine> {};

TEST_P(ReferenceCurve, HasItsKnownFigures) {
  const SoftLine& c = GetParam();
  const auto net = [&](double x) { return c.a * std::log1p(std::exp(c.b * (x - c.x0))); };
  const TwoArcs arcs = two_arc_contrast(net, -4.0, 0.0);
  EXPECT_NEAR(arcs.contrast_index, c.contrast_index, 0.003);
  EXPECT_NEAR(arcs.centre_log_h, c.centre, 0.003);
  EXPECT_NEAR(net(c.speed_point), 0.10, 0.001);
  EXPECT_NEAR(average_gradient(net, c.speed_point), c.average_gradient, 0.003);
}

INSTANTIATE_TEST_SUITE_P(
    FourCurves, ReferenceCurve,
    testing::Values(SoftLine{0.15, 4.2, -2.0, -2.0128, 0.5582, 0.5671, -2.1911},
                    SoftLine{0.10, 5.5, -2.2, -2.1016, 0.5194, 0.5215, -2.3010},
                    SoftLine{0.22, 3.6, -1.9, -2.0535, 0.6454, 0.6702, -2.1820},
                    SoftLine{0.12, 6.0, -2.1, -2.0561, 0.6744, 0.6840, -2.1907}));

TEST(TwoArcContrast, OfAStraightLineIsItsSlope) {
  for (const double slope : {0.3, 0.58, 0.9, 1.2}) {
    const auto net = [&](double x) { return std::max(0.0, slope * x); };
    EXPECT_NEAR(two_arc_contrast(net, -3.0, 1.0).contrast_index, slope, 0.002);
  }
}

TEST(TwoArcContrast, CrossingsLieWhereTheConstructionSays) {
  // At contrast index 0.58 the crossings have net density 0.1003 and 1.1038.
  const auto net = [](double x) { return std::max(0.0, 0.58 * x); };
  EXPECT_NEAR(net(0.2 / std::hypot(1.0, 0.58)), 0.1003, 0.0001);
  EXPECT_NEAR(slope_at_radius(net, 0.0, 0.2), 0.58, 1e-6);
  EXPECT_NEAR(slope_at_radius(net, 0.0, 2.2), 0.58, 1e-6);
}

class Family : public testing::TestWithParam<CurveFamily> {
 protected:
  [[nodiscard]] FilmCurve curve(double contrast_index) const {
    CurveSettings settings;
    settings.family = GetParam();
    settings.contrast_index = contrast_index;
    settings.speed_point_log_h = -2.3;
    return FilmCurve(settings);
  }
};

TEST_P(Family, HasTheContrastAndSpeedAskedFor) {
  for (const double wanted : {0.35, 0.58, 0.9}) {
    const FilmCurve film = curve(wanted);
    const auto net = [&](double x) { return film.density(x); };
    EXPECT_NEAR(two_arc_contrast(net, -5.0, -1.0).contrast_index, wanted, 0.001);
    EXPECT_NEAR(film.density(-2.3), 0.10, 0.001);
  }
}

TEST_P(Family, RisesFromNothingToItsMaximum) {
  constexpr double kRounding = 1e-12;
  const FilmCurve film = curve(0.58);
  double previous = film.density(-12.0);
  EXPECT_NEAR(previous, 0.0, 0.002);
  for (double x = -12.0; x < 12.0; x += 0.02) {
    const double density = film.density(x);
    EXPECT_GE(density, previous - kRounding);
    previous = density;
  }
  EXPECT_NEAR(previous, 2.6, 0.01);
}

TEST_P(Family, InverseAndTableAgreeWithIt) {
  const FilmCurve film = curve(0.58);
  for (double x = -3.0; x < 2.0; x += 0.173) {
    const double density = film.density(x);
    EXPECT_NEAR(film.quick_density(static_cast<float>(x)), density, 0.001);
    if (density > 0.01 && density < 2.5) {
      EXPECT_NEAR(film.log_h_of(density), x, 0.001);
    }
  }
}

INSTANTIATE_TEST_SUITE_P(AllFamilies, Family,
                         testing::Values(CurveFamily::kSoftToe, CurveFamily::kLogistic,
                                         CurveFamily::kStraightLine, CurveFamily::kQuantumCount,
                                         CurveFamily::kNormalSum, CurveFamily::kTwoLayers,
                                         CurveFamily::kSweptToe, CurveFamily::kShortToe,
                                         CurveFamily::kWavyLine),
                         [](const auto& test) {
                           std::string name = curve_family_name(test.param);
                           for (char& letter : name) letter = letter == '-' ? '_' : letter;
                           return name;
                         });

}  // namespace
}  // namespace filmsim
