#include "marks/mark_tile.h"

#include "marks/drawn_density.h"
#include "marks/noise_image.h"

#include <cmath>

#include <gtest/gtest.h>

namespace fogline {
namespace {

constexpr double pixels_per_mm = 20.0;
constexpr double clear = 0.3;
constexpr double grey = 1.0;

DrawnDensity grey_film() {
  return {20.0, 16.0, pixels_per_mm, grey};
}

MarkTile tile_of(const DrawnDensity& film, bool keep_channels = false) {
  const DensityScan scan = film.scan();
  const FilmExtent whole{film.film.along_begin_mm, film.film.along_end_mm,
                         film.film.across_begin_mm, film.film.across_end_mm};
  return mark_tile(film.film, scan.context(clear), whole, pixels_per_mm, keep_channels);
}

cv::Point pixel_at(const MarkTile& tile, PointMm at) {
  const cv::Point2d pixel = tile.pixel(at);
  return {static_cast<int>(std::floor(pixel.x)), static_cast<int>(std::floor(pixel.y))};
}

bool usable_at(const MarkTile& tile, PointMm at) {
  return tile.usable(pixel_at(tile, at)) != 0;
}

float density_at(const MarkTile& tile, PointMm at) {
  return tile.density(pixel_at(tile, at));
}

TEST(MarkTile, PixelsAndFilmAreTheSamePlaces) {
  MarkTile tile;
  tile.extent = {12.0, 22.0, -3.0, 3.0};
  tile.pixels_per_mm = 40.0;
  EXPECT_EQ(tile.film(0.0, 0.0), (PointMm{12.0, -3.0}));
  EXPECT_EQ(tile.film(40.0, 120.0), (PointMm{13.0, 0.0}));
  const cv::Point2d pixel = tile.pixel({14.5, -1.0});
  EXPECT_NEAR(pixel.x, 100.0, 1e-9);
  EXPECT_NEAR(pixel.y, 80.0, 1e-9);
}

// Stray light is taken away from the film's light, by a usual share where nothing opaque is in
// sight: it leaves some thousandths.
TEST(MarkTile, HoldsTheDensityOfEachPlace) {
  DrawnDensity film = grey_film();
  film.draw_disc({6.0, -3.0}, 1.0, 0.5);
  film.draw_disc({14.0, 2.0}, 1.0, -0.5);
  const MarkTile tile = tile_of(film);
  EXPECT_NEAR(density_at(tile, {10.0, 0.0}), grey, 0.01);
  EXPECT_NEAR(density_at(tile, {6.0, -3.0}), grey + 0.5, 0.03);
  EXPECT_NEAR(density_at(tile, {14.0, 2.0}), grey - 0.5, 0.01);
  EXPECT_NEAR(density_at(tile, {6.0, 3.0}), grey, 0.01);
  EXPECT_EQ(tile.clear_density, clear);
}

TEST(MarkTile, PieceHoldsItsOwnPartOfTheFilm) {
  DrawnDensity film = grey_film();
  film.draw_disc({6.0, -3.0}, 1.0, 0.5);
  const DensityScan scan = film.scan();
  const MarkTile tile =
      mark_tile(film.film, scan.context(clear), {4.0, 12.0, -5.0, 1.0}, pixels_per_mm, false);
  EXPECT_EQ(tile.density.size(), cv::Size(160, 120));
  EXPECT_NEAR(density_at(tile, {6.0, -3.0}), grey + 0.5, 0.03);
  // Its own borders lie inside the film: nothing is left out there.
  EXPECT_EQ(cv::countNonZero(tile.usable), 160 * 120);
}

TEST(MarkTile, TurnedScanGivesTheSameTile) {
  DrawnDensity film = grey_film();
  film.draw_disc({6.0, -3.0}, 1.0, 0.5);
  film.add_grain(0.02, 1);
  const MarkTile upright = tile_of(film);
  DrawnDensity turned = film;
  for (int quarter = 1; quarter < 4; ++quarter) {
    turned = turned.turned();
    const MarkTile tile = tile_of(turned);
    EXPECT_LT(most_apart(tile.density, upright.density), 0.005) << quarter;
    EXPECT_EQ(cv::countNonZero(tile.usable != upright.usable), 0) << quarter;
  }
}

TEST(MarkTile, KeepsChannelsOnlyWhereAsked) {
  const DrawnDensity film = grey_film();
  EXPECT_TRUE(tile_of(film).transmittance.empty());
  const Raster<float> kept = tile_of(film, true).transmittance;
  ASSERT_EQ(kept.width(), 400);
  EXPECT_NEAR(kept.at(200, 160), 0.1F, 0.002F);
}

TEST(MarkTile, LeavesOutTheFilmsEdges) {
  const MarkTile tile = tile_of(grey_film());
  for (const double across : {-7.9, -7.7, 7.7, 7.9}) {
    EXPECT_FALSE(usable_at(tile, {10.0, across})) << across;
  }
  for (const double along : {0.1, 0.3, 19.7, 19.9}) {
    EXPECT_FALSE(usable_at(tile, {along, 0.0})) << along;
  }
  EXPECT_TRUE(usable_at(tile, {10.0, -7.5}));
  EXPECT_TRUE(usable_at(tile, {10.0, 7.5}));
  EXPECT_TRUE(usable_at(tile, {0.5, 0.0}));
  EXPECT_TRUE(usable_at(tile, {19.5, 0.0}));
}

TEST(MarkTile, LeavesOutFrameBordersNotTheFrame) {
  DrawnDensity film = grey_film();
  film.film.frames = {{4.0, 14.0, -5.0, 5.0}};
  const MarkTile tile = tile_of(film);
  for (const PointMm border : {PointMm{4.0, 0.0}, {14.0, 0.0}, {9.0, -5.0}, {9.0, 5.0}}) {
    EXPECT_FALSE(usable_at(tile, border));
  }
  for (const PointMm beside : {PointMm{4.4, 0.0}, {3.6, 0.0}, {9.0, -4.6}, {9.0, -5.4}}) {
    EXPECT_TRUE(usable_at(tile, beside));
  }
}

TEST(MarkTile, LeavesOutPerforationsAndLeaders) {
  DrawnDensity film = grey_film();
  Perforation hole;
  hole.film = {8.0, -4.0};
  film.film.perforations = {hole};
  film.film.leaders = {{15.0, 20.0, -8.0, 8.0}};
  const MarkTile tile = tile_of(film);
  EXPECT_FALSE(usable_at(tile, {8.0, -4.0}));
  EXPECT_FALSE(usable_at(tile, {8.0 + film_135::hole_along_mm / 2.0 + 0.1, -4.0}));
  EXPECT_TRUE(usable_at(tile, {8.0 + film_135::hole_along_mm / 2.0 + 0.5, -4.0}));
  EXPECT_FALSE(usable_at(tile, {17.0, 0.0}));
  EXPECT_FALSE(usable_at(tile, {14.2, 0.0}));
  EXPECT_TRUE(usable_at(tile, {13.5, 0.0}));
}

// The film lies askew under a window of the holder.
TEST(MarkTile, NothingOutsideTheWindowIsFilm) {
  DrawnDensity film = grey_film();
  const auto corner = [&](PointMm at) { return film.film.map.scan_from_film(at); };
  film.film.window = {corner({2.0, -6.0}), corner({18.0, -4.0}), corner({18.0, 6.0}),
                      corner({2.0, 6.0})};
  const MarkTile tile = tile_of(film);
  EXPECT_FALSE(usable_at(tile, {17.0, -5.0}));
  EXPECT_FALSE(usable_at(tile, {10.0, 6.5}));
  EXPECT_FALSE(usable_at(tile, {1.5, 0.0}));
  EXPECT_TRUE(usable_at(tile, {10.0, 0.0}));
  EXPECT_TRUE(usable_at(tile, {4.0, -4.5}));
}

TEST(MarkTile, NothingOutsideTheScanIsFilm) {
  DrawnDensity film = grey_film();
  film.film.along_end_mm = 24.0;
  const MarkTile tile = tile_of(film);
  ASSERT_EQ(tile.density.cols, 480);
  EXPECT_FALSE(usable_at(tile, {22.0, 0.0}));
  EXPECT_FALSE(usable_at(tile, {19.9, 0.0}));
  EXPECT_TRUE(usable_at(tile, {19.4, 0.0}));
  EXPECT_TRUE(cv::checkRange(tile.density));
}

// Bare light that nobody told of: film that is torn, a hole that wasn't found.
TEST(MarkTile, BareLightIsNoFilmButAThinLineOfItIs) {
  DrawnDensity film = grey_film();
  film.draw_in({5.0, 7.0, -1.0, 1.0}, [](PointMm, double) { return 0.0; });
  film.draw_in({10.0, 18.0, 3.0, 3.1}, [](PointMm, double) { return 0.0; });
  const MarkTile tile = tile_of(film);
  EXPECT_FALSE(usable_at(tile, {6.0, 0.0}));
  EXPECT_FALSE(usable_at(tile, {7.1, 0.0}));
  EXPECT_TRUE(usable_at(tile, {8.0, 0.0}));
  EXPECT_TRUE(usable_at(tile, {14.0, 3.05}));
}

// A particle of dust is opaque and must be found; the holder is opaque and must not.
TEST(MarkTile, OpaqueParticleIsKeptOpaqueAreaIsNot) {
  DrawnDensity film = grey_film();
  film.draw_disc({5.0, 0.0}, 0.3, 4.0);
  film.draw_disc({14.0, 0.0}, 4.0, 4.0);
  const MarkTile tile = tile_of(film);
  EXPECT_TRUE(usable_at(tile, {5.0, 0.0}));
  EXPECT_GT(density_at(tile, {5.0, 0.0}), 2.0F);
  EXPECT_FALSE(usable_at(tile, {14.0, 0.0}));
  EXPECT_FALSE(usable_at(tile, {16.1, 0.0}));
  EXPECT_TRUE(usable_at(tile, {17.0, 0.0}));
  EXPECT_TRUE(cv::checkRange(tile.density));
}

// Filters look across what is left out: nothing there may stand out of the film round about.
TEST(MarkTile, HolesAreFilledWithTheFilmRoundThem) {
  DrawnDensity film = grey_film();
  Perforation hole;
  hole.film = {8.0, -4.0};
  film.film.perforations = {hole};
  film.draw_in({8.0 - film_135::hole_along_mm / 2.0, 8.0 + film_135::hole_along_mm / 2.0,
                -4.0 - film_135::hole_across_mm / 2.0, -4.0 + film_135::hole_across_mm / 2.0},
               [](PointMm, double) { return 0.0; });
  const MarkTile tile = tile_of(film);
  EXPECT_LT(most_apart(tile.density, cv::Mat1f(tile.density.size(), static_cast<float>(grey))),
            0.03);
}

TEST(FillUnusable, LeavesUsableFilmAloneAndFollowsItsSlope) {
  cv::Mat1f density(100, 200);
  for (int y = 0; y < density.rows; ++y) {
    for (int x = 0; x < density.cols; ++x) {
      density(y, x) = 0.5F + 0.005F * static_cast<float>(x);
    }
  }
  const cv::Mat1f before = density.clone();
  cv::Mat1b usable = all_of(density);
  const cv::Rect hole(90, 40, 20, 20);
  usable(hole).setTo(0);
  density(hole).setTo(9.0F);
  fill_unusable(density, usable, 10.0);
  EXPECT_LT(most_apart(density, before), 0.06);
  cv::Mat1f outside = density.clone();
  before(hole).copyTo(outside(hole));
  EXPECT_EQ(most_apart(outside, before), 0.0);
}

TEST(FillUnusable, WithoutFilmItIsEvenAndFinite) {
  cv::Mat1f density = noise_image(60, 40, 1.0, 2);
  fill_unusable(density, cv::Mat1b(density.size(), static_cast<unsigned char>(0)), 10.0);
  double least = 0.0;
  double most = 0.0;
  cv::minMaxLoc(density, &least, &most);
  EXPECT_EQ(least, most);
}

TEST(InnerUsable, ShrinksByTheDistancesGiven) {
  cv::Mat1b usable(40, 60, static_cast<unsigned char>(255));
  usable(20, 30) = 0;
  const cv::Mat1b inner = inner_usable(usable, 3, 2);
  EXPECT_EQ(cv::countNonZero(inner == 0), 7 * 5);
  EXPECT_EQ(inner(20, 33), 0);
  EXPECT_NE(inner(20, 34), 0);
  EXPECT_EQ(inner(22, 30), 0);
  EXPECT_NE(inner(23, 30), 0);
  EXPECT_EQ(cv::countNonZero(inner_usable(usable, 0, 0) != usable), 0);
}

}  // namespace
}  // namespace fogline
