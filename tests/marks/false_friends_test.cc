// What looks like a mark and is part of the film or its pictures.

#include "marks/marks_at_places.h"

#include <cmath>
#include <utility>

#include <gmock/gmock.h>
#include <gtest/gtest.h>

namespace fogline {
namespace {

using testing::IsEmpty;

constexpr double pixels_per_mm = 20.0;
constexpr double clear = 0.3;
constexpr double grain = 0.015;

/// A piece of 135 film with the end of one frame and the beginning of the next.
DrawnDensity two_frames() {
  DrawnDensity film(24.0, film_135::width_mm, pixels_per_mm, clear);
  film.film.format = FilmFormat::f135;
  for (const auto& [begin_mm, end_mm] : {std::pair{0.0, 11.0}, {13.0, 24.0}}) {
    film.draw_in({begin_mm, end_mm - 0.5 / pixels_per_mm, -12.0, 12.0 - 0.5 / pixels_per_mm},
                 [](PointMm, double) { return 1.1; });
  }
  return film;
}

void tell_frames(DrawnDensity& film) {
  film.film.frames = {{0.0, 11.0, -12.0, 12.0}, {13.0, 24.0, -12.0, 12.0}};
}

TEST(FalseFriends, FrameBordersAreNoMarksWhetherKnownOrNot) {
  DrawnDensity film = two_frames();
  film.add_grain(grain, 1);
  EXPECT_THAT(film.search(clear).marks, IsEmpty());
  tell_frames(film);
  EXPECT_THAT(film.search(clear).marks, IsEmpty());
}

// The gate's edge leaves a dark rim where light crept under it.
TEST(FalseFriends, DenseRimOfAFrameIsNoScratch) {
  DrawnDensity film = two_frames();
  for (const double across : {-11.95, 11.95}) {
    draw_line(film, {{0.0, across}, {11.0, across}}, 0.1, 0.3);
    draw_line(film, {{13.0, across}, {24.0, across}}, 0.1, 0.3);
  }
  tell_frames(film);
  film.add_grain(grain, 2);
  EXPECT_THAT(told(film.search(clear)), IsEmpty());
}

TEST(FalseFriends, HorizonAndWallAreNoScratches) {
  DrawnDensity film = two_frames();
  film.draw_in({0.0, 11.0, -12.0, 3.0}, [](PointMm, double density) { return density + 0.5; });
  film.draw_in({17.0, 20.0, -6.0, 12.0}, [](PointMm, double density) { return density - 0.4; });
  tell_frames(film);
  film.add_grain(grain, 3);
  EXPECT_THAT(film.search(clear).marks, IsEmpty());
}

// Wires before the sky: thin, straight along the film, but side by side and of one frame.
TEST(FalseFriends, WiresAreNoScratches) {
  DrawnDensity film = two_frames();
  for (const double across : {-5.0, -4.2, -3.4, -2.6}) {
    draw_line(film, {{0.0, across}, {11.0, across}}, 0.06, -0.3);
  }
  tell_frames(film);
  film.add_grain(grain, 4);
  EXPECT_THAT(told(film.search(clear)), IsEmpty());
}

TEST(FalseFriends, GridOfBarsIsNoFibre) {
  DrawnDensity film = two_frames();
  for (int i = 0; i < 6; ++i) {
    const double along = 14.5 + 1.5 * i;
    draw_line(film, {{along, -6.0}, {along, -1.0}}, 0.08, 0.15);
    draw_line(film, {{14.5, -6.0 + i}, {22.0, -6.0 + i}}, 0.08, 0.15);
  }
  tell_frames(film);
  film.add_grain(grain, 5);
  EXPECT_THAT(told(film.search(clear)), IsEmpty());
}

// Bars along the film, as bar codes and arrows of the edge print have them.
TEST(FalseFriends, BarsOfTheEdgePrintAreNoMarks) {
  DrawnDensity film = two_frames();
  for (int i = 0; i < 5; ++i) {
    draw_line(film, {{2.0 + 4.0 * i, 16.2}, {4.5 + 4.0 * i, 16.2}}, 0.3, 0.9);
    draw_line(film, {{2.0 + 4.0 * i, -16.0}, {2.0 + 4.0 * i, -16.8}}, 0.3, 0.9);
  }
  film.add_grain(grain, 6);
  EXPECT_THAT(told(film.search(clear)), IsEmpty());
}

// Out of focus: round and lonely, but soft.
TEST(FalseFriends, SoftSpotsOfThePictureAreNoDust) {
  DrawnDensity film = two_frames();
  for (const PointMm middle : {PointMm{4.0, 0.0}, {7.0, -6.0}, {18.0, 4.0}}) {
    film.draw_in({middle.along_mm - 2.0, middle.along_mm + 2.0, middle.across_mm - 2.0,
                  middle.across_mm + 2.0},
                 [&](PointMm at, double density) {
                   const double off = distance_mm(at, middle) / 0.25;
                   return density + 0.5 * std::exp(-0.5 * off * off);
                 });
  }
  tell_frames(film);
  film.add_grain(grain, 8);
  EXPECT_THAT(told(film.search(clear)), IsEmpty());
}

}  // namespace
}  // namespace fogline
