#include "film/film_map.h"

#include "base/seeded_noise.h"
#include "film/film_layout.h"

#include <cmath>
#include <functional>
#include <numbers>
#include <vector>

#include <gtest/gtest.h>

namespace fogline {
namespace {

using TrueMap = std::function<PointPx(PointMm)>;

double apart_px(PointPx a, PointPx b) {
  return std::hypot(a.x - b.x, a.y - b.y);
}

/// A turn of 3.2 degrees clockwise at 47.2 pixels a millimetre, and the perspective of a camera
/// that leans over the film: per millimetre, `along_tilt` and `across_tilt` of the distance are
/// added.
PointPx leaning_camera(PointMm film, double along_tilt, double across_tilt) {
  const double angle = 3.2 * std::numbers::pi / 180.0;
  const double depth = 1.0 + along_tilt * film.along_mm + across_tilt * film.across_mm;
  const double s = 47.2 * film.along_mm / depth;
  const double t = 47.2 * film.across_mm / depth;
  return {400.0 + s * std::cos(angle) - t * std::sin(angle),
          900.0 + s * std::sin(angle) + t * std::cos(angle)};
}

/// The far end of 180 mm is 1.8 % farther away than the near one.
PointPx camera(PointMm film) {
  return leaning_camera(film, 1e-4, 0.0);
}

/// The lattice of perforations of a strip of 38 pitches.
std::vector<MapPoint> lattice(const TrueMap& truth, std::vector<int> rows, double noise_px) {
  SeededNoise noise(5);
  std::vector<MapPoint> points;
  for (const int row : rows) {
    for (int k = 0; k < 38; ++k) {
      const PointMm film{k * film_135::pitch_mm, row * film_135::row_across_mm};
      PointPx scan = truth(film);
      scan.x += noise.normal(noise_px);
      scan.y += noise.normal(noise_px);
      points.push_back({film, scan});
    }
  }
  return points;
}

double worst_px(const FilmMap& map, const TrueMap& truth) {
  double worst = 0.0;
  for (double s = 0.0; s <= 175.0; s += 5.0) {
    for (double t = -17.0; t <= 17.0; t += 2.0) {
      worst = std::max(worst, apart_px(map.scan_from_film({s, t}), truth({s, t})));
    }
  }
  return worst;
}

void expect_round_trip(const FilmMap& map, double begin_mm, double end_mm) {
  for (double s = begin_mm; s <= end_mm; s += 7.3) {
    for (double t = -20.0; t <= 20.0; t += 3.7) {
      const PointPx scan = map.scan_from_film({s, t});
      const PointMm film = map.film_from_scan(scan);
      EXPECT_NEAR(film.along_mm, s, 1e-6);
      EXPECT_NEAR(film.across_mm, t, 1e-6);
      EXPECT_LT(apart_px(map.scan_from_film(film), scan), 1e-4);
    }
  }
}

TEST(FilmMap, StraightRoundTrip) {
  for (const double direction : {0.0, 3.0, -2.5, 45.0, 90.0, 178.0, -91.0}) {
    expect_round_trip(FilmMap::straight({1000.0, 700.0}, direction, 94.5), -150.0, 150.0);
  }
}

// Beyond the fitted stretch too, where the map goes on in straight lines.
TEST(FilmMap, FittedRoundTrip) {
  expect_round_trip(FilmMap::fitted(lattice(camera, {-1, 1}, 0.3)), -30.0, 210.0);
}

TEST(FilmMap, RotationIsClockwise) {
  const FilmMap map = FilmMap::straight({0.0, 0.0}, 3.0, 10.0);
  EXPECT_NEAR(map.rotation_deg(), 3.0, 1e-9);
  EXPECT_NEAR(map.direction_deg(), 3.0, 1e-9);
  // Clockwise as seen: along runs to the right and down, y growing downwards.
  EXPECT_GT(map.scan_from_film({50.0, 0.0}).y, 0.0);
  // Across lies to the right of the direction of travel: below a strip that runs to the right.
  EXPECT_GT(map.scan_from_film({0.0, 10.0}).y, 0.0);
  EXPECT_NEAR(FilmMap::straight({}, 93.0, 10.0).rotation_deg(), 3.0, 1e-9);
  EXPECT_NEAR(FilmMap::straight({}, 178.0, 10.0).rotation_deg(), -2.0, 1e-9);
  EXPECT_NEAR(FilmMap::straight({}, -40.0, 10.0).rotation_deg(), -40.0, 1e-9);
  EXPECT_NEAR(FilmMap::straight({}, 33.0, 12.5).pixels_per_mm(), 12.5, 1e-9);
}

// Without noise a camera's perspective is followed within a tenth of a pixel (0.002 mm).
TEST(FilmMap, FollowsPerspective) {
  EXPECT_LT(worst_px(FilmMap::fitted(lattice(camera, {-1, 1}, 0.0)), camera), 0.1);
}

// A camera that leans across the film bends what the map holds straight between the rows: by
// tilt * row_across^2 at the middle line, 0.034 mm for a tilt of 0.6 % over the film's width. It
// stays right on the rows.
TEST(FilmMap, IsStraightAcrossTheFilm) {
  constexpr double tilt = 1.7e-4;
  const auto leaning = [](PointMm film) { return leaning_camera(film, 0.0, tilt); };
  const FilmMap map = FilmMap::fitted(lattice(leaning, {-1, 1}, 0.0));
  const double row = film_135::row_across_mm;
  for (const double s : {20.0, 88.0, 150.0}) {
    EXPECT_LT(apart_px(map.scan_from_film({s, row}), leaning({s, row})), 0.1);
    EXPECT_LT(apart_px(map.scan_from_film({s, -row}), leaning({s, -row})), 0.1);
    // Across the film alone: along it the same tilt shifts by a second part.
    const PointMm middle = map.film_from_scan(leaning({s, 0.0}));
    EXPECT_NEAR(std::abs(middle.across_mm), tilt * row * row, 0.005);
  }
}

// 76 holes placed to 0.3 pixels, one of them a spot that is no hole at all. Eight terms of 76
// points leave a standard error of a third of the noise at the middle, its whole at the corners.
TEST(FilmMap, RecoversTurnAndScaleDespiteNoiseAndAWildPoint) {
  std::vector<MapPoint> points = lattice(camera, {-1, 1}, 0.3);
  points[20].scan.x += 60.0;
  points[20].scan.y -= 25.0;
  const FilmMap map = FilmMap::fitted(points);
  ASSERT_FALSE(map.empty());
  EXPECT_LT(worst_px(map, camera), 3.0 * 0.3);
  // Truth at the middle by differences.
  const double middle = 37 * film_135::pitch_mm / 2.0;
  const PointPx a = camera({middle - 0.01, 0.0});
  const PointPx b = camera({middle + 0.01, 0.0});
  EXPECT_NEAR(map.pixels_per_mm(), apart_px(a, b) / 0.02, 0.02);
  EXPECT_NEAR(map.rotation_deg(), std::atan2(b.y - a.y, b.x - a.x) * 180.0 / std::numbers::pi,
              0.02);
}

// A strip that bows by 0.5 mm over its length.
TEST(FilmMap, FollowsABow) {
  const auto bowed = [](PointMm film) {
    const double u = (film.along_mm - 88.0) / 88.0;
    return PointPx{100.0 + 40.0 * film.along_mm, 800.0 + 40.0 * (film.across_mm + 0.5 * u * u)};
  };
  EXPECT_LT(worst_px(FilmMap::fitted(lattice(bowed, {-1, 1}, 0.0)), bowed), 0.1);
}

// One row alone: across is square to it at the same scale, and the origin lies on the middle line.
TEST(FilmMap, OneRowFitsSquare) {
  const FilmMap truth = FilmMap::straight({500.0, 600.0}, -1.5, 30.0);
  for (const int row : {-1, 1}) {
    const auto plain = [&](PointMm film) { return truth.scan_from_film(film); };
    const FilmMap map = FilmMap::fitted(lattice(plain, {row}, 0.0));
    ASSERT_FALSE(map.empty());
    EXPECT_LT(worst_px(map, plain), 0.01) << row;
    const PointPx origin = map.scan_from_film({80.0, 0.0});
    const PointPx along = map.scan_from_film({81.0, 0.0});
    const PointPx across = map.scan_from_film({80.0, 1.0});
    const double dot =
        (along.x - origin.x) * (across.x - origin.x) + (along.y - origin.y) * (across.y - origin.y);
    EXPECT_NEAR(dot, 0.0, 1e-3);
    EXPECT_NEAR(apart_px(origin, across), apart_px(origin, along), 1e-3);
  }
}

TEST(FilmMap, FewerThanTwoPointsLeaveItEmpty) {
  EXPECT_TRUE(FilmMap().empty());
  EXPECT_TRUE(FilmMap::fitted({}).empty());
  const std::vector<MapPoint> one{{{0.0, -14.0}, {10.0, 20.0}}};
  EXPECT_TRUE(FilmMap::fitted(one).empty());
  const std::vector<MapPoint> two{{{0.0, -14.0}, {10.0, 20.0}}, {{9.5, -14.0}, {105.0, 20.0}}};
  const FilmMap map = FilmMap::fitted(two);
  ASSERT_FALSE(map.empty());
  EXPECT_NEAR(map.pixels_per_mm(), 10.0, 1e-9);
}

}  // namespace
}  // namespace fogline
