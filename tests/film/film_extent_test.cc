#include "film/strips/film_extent.h"

#include "film/drawn_straight.h"

#include <algorithm>

#include <gtest/gtest.h>

namespace fogline {
namespace {

/// The walk along the film takes steps of 0.2 mm, that across it steps of 0.1 mm; half a spot more.
constexpr double along_slack_mm = 0.25;
constexpr double across_slack_mm = 0.15;

drawn::Strip one_picture() {
  drawn::Strip strip;
  strip.end_mm = 60.0;
  strip.frames = {strip.frame(12.0)};
  return strip;
}

struct Seen {
  FilmStrip film;
  ClearLevel level;
};

/// The strip with its extent found, as it was laid.
Seen seen(const drawn::Strip& strip, const drawn::Laid& laid) {
  Seen result;
  result.film = drawn::known_film(drawn::Scan{}, strip);
  result.level = clear_level_from_rebate(drawn::straight_of(strip, laid), result.film);
  find_film_extent(result.film, result.level);
  return result;
}

TEST(WidestExtent, HoldsTheWholeImageAlongTheFilm) {
  for (const double turn : {-3.0, 0.0, 3.0}) {
    drawn::Scan scan = drawn::scan_of(one_picture());
    scan.strips[0].direction_deg = turn;
    const FilmStrip film = drawn::known_film(scan, scan.strips[0]);
    const FilmExtent extent = widest_extent(film, scan.width_px, scan.height_px, 19.5);
    SCOPED_TRACE(turn);
    // The image's borders lie 3 mm beyond the film's ends; a step of half a millimetre is lost and
    // 2 mm are added for the corners.
    EXPECT_LE(extent.along_begin_mm, -3.0);
    EXPECT_GE(extent.along_begin_mm, -3.0 - 2.1);
    EXPECT_GE(extent.along_end_mm, 63.0);
    EXPECT_LE(extent.along_end_mm, 63.0 + 2.2);
    EXPECT_EQ(extent.across_begin_mm, -19.5);
    EXPECT_EQ(extent.across_end_mm, 19.5);
  }
}

TEST(WidestExtent, WithoutHolesStartsFromTheKnownExtent) {
  drawn::Scan scan = drawn::scan_of(one_picture());
  FilmStrip film = drawn::known_film(scan, scan.strips[0]);
  film.perforations.clear();
  film.along_begin_mm = 10.0;
  film.along_end_mm = 50.0;
  const FilmExtent extent = widest_extent(film, scan.width_px, scan.height_px, 19.5);
  EXPECT_LE(extent.along_begin_mm, -3.0);
  EXPECT_GE(extent.along_end_mm, 63.0);
}

// The film's width is 34.975 mm by ISO 1007.
TEST(FindFilmExtent, EndsInBareLight) {
  for (const double base : {0.05, 0.5}) {
    for (const std::uint32_t seed : {1U, 2U}) {
      drawn::Strip strip = one_picture();
      strip.base_density = base;
      const FilmStrip film = seen(strip, {.grain_density = 0.01, .seed = seed}).film;
      SCOPED_TRACE(base);
      EXPECT_NEAR(film.along_begin_mm, 0.0, along_slack_mm);
      EXPECT_NEAR(film.along_end_mm, 60.0, along_slack_mm);
      EXPECT_NEAR(film.across_begin_mm, -34.975 / 2.0, across_slack_mm);
      EXPECT_NEAR(film.across_end_mm, 34.975 / 2.0, across_slack_mm);
      EXPECT_EQ(film.surround, Surround::bare_light);
    }
  }
}

TEST(FindFilmExtent, EndsInAnOpaqueHolder) {
  const FilmStrip film = seen(one_picture(), {.surround_density = 3.0, .grain_density = 0.01}).film;
  EXPECT_NEAR(film.along_begin_mm, 0.0, along_slack_mm);
  EXPECT_NEAR(film.along_end_mm, 60.0, along_slack_mm);
  EXPECT_NEAR(film.across_begin_mm, -34.975 / 2.0, across_slack_mm);
  EXPECT_NEAR(film.across_end_mm, 34.975 / 2.0, across_slack_mm);
  EXPECT_EQ(film.surround, Surround::opaque);
}

// Laid no farther than the film itself: nothing is seen around it.
TEST(FindFilmExtent, EndsAtTheImageBorder) {
  const FilmStrip film = seen(one_picture(), {.beyond_mm = 0.0, .grain_density = 0.01}).film;
  EXPECT_NEAR(film.along_begin_mm, 0.0, along_slack_mm);
  EXPECT_NEAR(film.along_end_mm, 60.0, along_slack_mm);
  EXPECT_EQ(film.surround, Surround::image_border);
}

// A holder's bar hides all beyond 10 mm on one side, a row of holes and the rebate with it.
TEST(FindFilmExtent, AHolderMayCoverOneSide) {
  drawn::Strip strip = one_picture();
  strip.patches = {{{0.0, 60.0, 10.0, 18.0}, 3.0}};
  FilmStrip film = drawn::known_film(drawn::Scan{}, strip);
  std::erase_if(film.perforations, [](const Perforation& hole) { return hole.row > 0; });
  StraightStrip straight = drawn::straight_of(strip, {.grain_density = 0.01});
  // What lies there is the holder, not film, holes included.
  for (int y = straight.row(10.0); y < straight.light.height(); ++y) {
    std::fill_n(straight.light.row(y), straight.light.width(), 0.0005F);
  }
  find_film_extent(film, clear_level_from_rebate(straight, film));
  EXPECT_NEAR(film.across_begin_mm, -34.975 / 2.0, across_slack_mm);
  EXPECT_NEAR(film.across_end_mm, 10.0, across_slack_mm);
}

TEST(ClearRebateShare, IsTheBetterSidesShare) {
  const Seen clear = seen(one_picture(), {});
  EXPECT_GT(clear_rebate_share(clear.film, clear.level), 0.98);
  // The last 18 of 60 mm fogged from edge to edge.
  drawn::Strip fogged = one_picture();
  fogged.patches = {{{42.0, 60.0, -18.0, 18.0}, 1.0}};
  Seen both = seen(fogged, {.grain_density = 0.01});
  EXPECT_NEAR(clear_rebate_share(both.film, both.level), 0.7, 0.02);
  // The same on one side alone leaves the other clear.
  fogged.patches = {{{42.0, 60.0, 0.0, 18.0}, 1.0}};
  both = seen(fogged, {.grain_density = 0.01});
  EXPECT_GT(clear_rebate_share(both.film, both.level), 0.98);
}

/// The leaders of 60 mm of film that is fogged between two places.
std::vector<FilmExtent> leaders(double begin_mm, double end_mm, double across_begin_mm = -18.0,
                                double across_end_mm = 18.0) {
  drawn::Strip strip = one_picture();
  strip.frames.clear();
  strip.patches = {{{begin_mm, end_mm, across_begin_mm, across_end_mm}, 0.9}};
  FilmStrip film = drawn::known_film(strip);
  find_leaders(film, {.excess = drawn::excess_of(strip, {.grain_density = 0.01})});
  return film.leaders;
}

// Looked for in steps of 0.2 mm that reach a millimetre ahead over a band that print hides.
constexpr double leader_slack_mm = 1.0;

TEST(FindLeaders, LieAtEitherEnd) {
  const std::vector<FilmExtent> first = leaders(-1.0, 20.0);
  ASSERT_EQ(first.size(), 1U);
  EXPECT_EQ(first[0].along_begin_mm, 0.0);
  EXPECT_NEAR(first[0].along_end_mm, 20.0, leader_slack_mm);
  EXPECT_NEAR(first[0].across_end_mm - first[0].across_begin_mm, 34.975, 1e-9);
  const std::vector<FilmExtent> last = leaders(40.0, 61.0);
  ASSERT_EQ(last.size(), 1U);
  EXPECT_NEAR(last[0].along_begin_mm, 40.0, leader_slack_mm);
  EXPECT_EQ(last[0].along_end_mm, 60.0);
}

// Two millimetres are the cut's own fog, what lies in the middle is light leaked in, and one dense
// side is edge print.
TEST(FindLeaders, AreNothingElse) {
  EXPECT_TRUE(leaders(0.0, 0.0).empty());
  EXPECT_TRUE(leaders(-1.0, 2.0).empty());
  EXPECT_TRUE(leaders(25.0, 40.0).empty());
  EXPECT_TRUE(leaders(-1.0, 20.0, 0.0, 18.0).empty());
}

}  // namespace
}  // namespace fogline
