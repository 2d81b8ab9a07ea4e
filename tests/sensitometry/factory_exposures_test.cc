#include "sensitometry/factory_exposures.h"

#include "sensitometry/density_film.h"

#include <gtest/gtest.h>

namespace fogline {
namespace {

using drawn::base_density;

/// Middle of the outer rebate.
constexpr double rebate_mm = 16.4;

/// Strokes across the outer rebate, 1.2 mm high, every 2.5 mm.
DensityStrip printed(const FilmStrip& film, double stroke_mm, double net) {
  DensityStrip density = drawn::clear_density(film);
  for (int i = 0; i < 40; ++i) {
    const double begin = 5.0 + 2.5 * i;
    drawn::add_density(density, {begin, begin + stroke_mm, rebate_mm - 0.6, rebate_mm + 0.6}, net);
  }
  return density;
}

TEST(EdgePrint, ReadsTheCoresOfBars) {
  const FilmStrip film = drawn::perforated_film();
  const std::optional<AreaReading> print =
      read_edge_print(printed(film, 0.5, 1.05), film, base_density);
  ASSERT_TRUE(print.has_value());
  EXPECT_NEAR(print->density, base_density + 1.05, 0.01);
  // Cores are a spot smaller than the bar on every side: 0.3 x 1.0 mm of forty bars.
  EXPECT_NEAR(print->area_mm2, 40 * 0.3 * 1.0, 3.0);
  EXPECT_GT(print->place.across_begin_mm, 15.5);
  EXPECT_LT(print->place.across_end_mm, film_135::width_mm / 2.0);
}

TEST(EdgePrint, IgnoresThinStrokes) {
  const FilmStrip film = drawn::perforated_film();
  EXPECT_FALSE(read_edge_print(printed(film, 0.15, 1.05), film, base_density).has_value());
  // Beside bars they don't count.
  DensityStrip both = printed(film, 0.5, 1.05);
  for (int i = 0; i < 40; ++i) {
    const double begin = 6.3 + 2.5 * i;
    drawn::add_density(both, {begin, begin + 0.15, rebate_mm - 0.6, rebate_mm + 0.6}, 0.4);
  }
  const std::optional<AreaReading> print = read_edge_print(both, film, base_density);
  ASSERT_TRUE(print.has_value());
  EXPECT_NEAR(print->density, base_density + 1.05, 0.01);
}

TEST(EdgePrint, NeedsHalfASquareMillimetreAndRealDensity) {
  const FilmStrip film = drawn::perforated_film();
  EXPECT_FALSE(read_edge_print(drawn::clear_density(film), film, base_density).has_value());
  EXPECT_FALSE(read_edge_print(printed(film, 0.5, 0.10), film, base_density).has_value());
  DensityStrip one_bar = drawn::clear_density(film);
  drawn::add_density(one_bar, {20.0, 20.5, rebate_mm - 0.6, rebate_mm + 0.6}, 1.0);
  EXPECT_FALSE(read_edge_print(one_bar, film, base_density).has_value());
}

TEST(EdgePrint, IsNotReadOnALeaderOrOnOtherFilm) {
  FilmStrip film = drawn::perforated_film();
  const DensityStrip density = printed(film, 0.5, 1.05);
  film.leaders = {{0.0, 114.0, film.across_begin_mm, film.across_end_mm}};
  EXPECT_FALSE(read_edge_print(density, film, base_density).has_value());
  film.leaders.clear();
  film.format = FilmFormat::f120;
  EXPECT_FALSE(read_edge_print(density, film, base_density).has_value());
}

TEST(Leader, ReadsTheFoggedEnd) {
  FilmStrip film = drawn::perforated_film();
  DensityStrip density = drawn::clear_density(film);
  // Fades over the last three millimetres; a tongue is cut away beside it.
  drawn::add_density(density, {0.0, 27.0, -18.0, 18.0}, 2.1);
  drawn::add_density(density, {27.0, 30.0, -18.0, 18.0}, 1.0);
  for (int y = density.row(4.0); y < density.visual.height(); ++y) {
    for (int x = 0; x < density.column(15.0); ++x) {
      density.visual.at(x, y) = 0.0F;
    }
  }
  film.leaders = {{0.0, 30.0, film.across_begin_mm, film.across_end_mm}};
  const std::optional<AreaReading> leader = read_leader(density, film);
  ASSERT_TRUE(leader.has_value());
  EXPECT_NEAR(leader->density, base_density + 2.1, 0.005);
  EXPECT_LE(leader->place.along_end_mm, 27.0);
}

TEST(Leader, MayLieAtTheOtherEnd) {
  FilmStrip film = drawn::perforated_film();
  DensityStrip density = drawn::clear_density(film);
  drawn::add_density(density, {94.0, 114.0, -18.0, 18.0}, 1.7);
  film.leaders = {{90.0, 114.0, film.across_begin_mm, film.across_end_mm}};
  const std::optional<AreaReading> leader = read_leader(density, film);
  ASSERT_TRUE(leader.has_value());
  EXPECT_NEAR(leader->density, base_density + 1.7, 0.005);
  EXPECT_GE(leader->place.along_begin_mm, 93.0);
}

TEST(Leader, NeedsOne) {
  FilmStrip film = drawn::perforated_film();
  EXPECT_FALSE(read_leader(drawn::clear_density(film), film).has_value());
  film.leaders = {{0.0, 30.0, film.across_begin_mm, film.across_end_mm}};
  EXPECT_FALSE(read_leader(drawn::clear_density(film), film).has_value());
}

}  // namespace
}  // namespace fogline
