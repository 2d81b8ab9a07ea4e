// What must hold of any search for marks, however it finds them.

#include "marks/marks_at_places.h"

#include <cmath>
#include <vector>

#include <gmock/gmock.h>
#include <gtest/gtest.h>

namespace fogline {
namespace {

using testing::IsEmpty;
using testing::SizeIs;

constexpr double fine = 40.0;
constexpr double clear = 0.3;
constexpr double grey = 1.0;
constexpr double grain = 0.02;

DrawnDensity grey_film(double length_mm = 12.0, double width_mm = 9.0) {
  return {length_mm, width_mm, fine, grey};
}

struct DrawnMark {
  MarkKind kind;
  PointMm middle;
};

/// A mark of each small kind, about a place.
const std::vector<DrawnMark> small_marks{{MarkKind::dust, {-4.0, -3.0}},
                                         {MarkKind::pinhole, {-3.0, 3.0}},
                                         {MarkKind::air_bell, {3.0, -2.0}},
                                         {MarkKind::fibre, {2.0, 3.0}}};

PointMm placed(const DrawnMark& mark, PointMm about) {
  return {about.along_mm + mark.middle.along_mm, about.across_mm + mark.middle.across_mm};
}

void draw_small_marks(DrawnDensity& film, PointMm about) {
  film.draw_disc(placed(small_marks[0], about), 0.2, 1.2);
  film.draw_disc(placed(small_marks[1], about), 0.18, clear - grey);
  film.draw_disc(placed(small_marks[2], about), 0.8, -0.3);
  // The box of a half circle has its middle half a radius off the circle's.
  const PointMm thread = placed(small_marks[3], about);
  draw_line(film, arc({thread.along_mm, thread.across_mm - 0.4}, 0.8, 0.0, 180.0), 0.05, 0.15);
}

constexpr PointMm film_middle{6.0, 0.0};

DrawnDensity film_with_small_marks(double grain_sd, std::uint32_t seed) {
  DrawnDensity film = grey_film();
  draw_small_marks(film, film_middle);
  film.add_grain(grain_sd, seed);
  return film;
}

void expect_small_marks(const std::vector<Mark>& marks, PointMm about) {
  for (const DrawnMark& mark : small_marks) {
    EXPECT_EQ(mark_at(marks, placed(mark, about), 0.1).kind, mark.kind)
        << placed(mark, about).along_mm << ' ' << placed(mark, about).across_mm;
  }
}

TEST(MarkLaws, AllSmallKindsAreToldAndNothingElse) {
  for (std::uint32_t seed = 1; seed <= 3; ++seed) {
    const std::vector<Mark> marks = told(film_with_small_marks(grain, seed).search(clear));
    EXPECT_THAT(marks, SizeIs(small_marks.size())) << seed;
    expect_small_marks(marks, film_middle);
  }
}

TEST(MarkLaws, MarksCarryTheirStripAndAChance) {
  const DrawnDensity film = film_with_small_marks(grain, 1);
  const DensityScan scan = film.scan();
  const MarkSearch search = find_marks(film.film, 7, scan.context(clear));
  ASSERT_FALSE(search.marks.empty());
  for (const Mark& mark : search.marks) {
    EXPECT_EQ(mark.strip, 7);
    EXPECT_GE(mark.confidence, 0.5);
    EXPECT_LT(mark.confidence, 1.0);
    EXPECT_GT(mark.size_mm, 0.0);
    EXPECT_TRUE(mark.area_mm2.has_value());
    EXPECT_TRUE(mark.contrast_density.has_value());
  }
}

/// Discs of all sizes and contrasts, some over one another.
DrawnDensity crowded_film() {
  DrawnDensity film = grey_film();
  SeededNoise places(3);
  for (int i = 0; i < 30; ++i) {
    film.draw_disc({places.uniform(1.0, 11.0), places.uniform(-3.5, 3.5)}, places.uniform(0.1, 0.9),
                   places.uniform(-0.5, 1.0));
  }
  return film;
}

bool overlap(const BoxPx& a, const BoxPx& b) {
  return a.x < b.x + b.width && b.x < a.x + a.width && a.y < b.y + b.height && b.y < a.y + a.height;
}

TEST(MarkLaws, EachThingIsOneMark) {
  const std::vector<Mark> marks = crowded_film().search(clear).marks;
  EXPECT_GT(marks.size(), 3U);
  for (std::size_t i = 0; i < marks.size(); ++i) {
    for (std::size_t j = i + 1; j < marks.size(); ++j) {
      EXPECT_FALSE(marks[i].kind == marks[j].kind && overlap(marks[i].box_px, marks[j].box_px))
          << i << ' ' << j;
    }
  }
}

TEST(MarkLaws, TurnedScanHasTheSameMarksInTurnedBoxes) {
  DrawnDensity film = film_with_small_marks(grain, 1);
  const std::vector<Mark> upright = told(film.search(clear));
  ASSERT_THAT(upright, SizeIs(small_marks.size()));
  for (int quarter = 1; quarter < 4; ++quarter) {
    film = film.turned();
    const std::vector<Mark> turned = told(film.search(clear));
    EXPECT_EQ(turned.size(), upright.size()) << quarter;
    for (const Mark& mark : upright) {
      const Mark other = mark_at(turned, mark.middle, 0.02);
      EXPECT_EQ(other.kind, mark.kind) << quarter;
      EXPECT_NEAR(other.size_mm, mark.size_mm, 0.03) << quarter;
      EXPECT_NEAR(*other.contrast_density, *mark.contrast_density, 0.02) << quarter;
      const PointPx middle = film.film.map.scan_from_film(other.middle);
      EXPECT_NEAR(other.box_px.x + 0.5 * other.box_px.width, middle.x, 2.0);
      EXPECT_NEAR(other.box_px.y + 0.5 * other.box_px.height, middle.y, 2.0);
      const bool on_its_side = quarter % 2 == 1;
      EXPECT_NEAR(on_its_side ? other.box_px.height : other.box_px.width, mark.box_px.width, 2.0);
      EXPECT_NEAR(on_its_side ? other.box_px.width : other.box_px.height, mark.box_px.height, 2.0);
    }
  }
}

TEST(MarkLaws, MirroredFilmHasTheMirroredMarks) {
  const DrawnDensity film = film_with_small_marks(grain, 2);
  const std::vector<Mark> plain = told(film.search(clear));
  const std::vector<Mark> mirrored = told(film.mirrored().search(clear));
  ASSERT_THAT(plain, SizeIs(small_marks.size()));
  EXPECT_EQ(mirrored.size(), plain.size());
  for (const Mark& mark : plain) {
    const Mark other =
        mark_at(mirrored, {mark.middle.along_mm, -mark.middle.across_mm}, 1.5 / fine);
    EXPECT_EQ(other.kind, mark.kind);
    EXPECT_NEAR(other.size_mm, mark.size_mm, 0.06);
    EXPECT_NEAR(*other.contrast_density, *mark.contrast_density, 0.02);
  }
}

// The strip is cut into overlapping tiles. Where the first ends hangs on where the film begins: on
// each length of film left out a border falls on other marks.
TEST(MarkLaws, TileBordersDontShow) {
  DrawnDensity film = grey_film(40.0, 20.0);
  const std::vector<PointMm> abouts{{29.0, -5.0}, {32.0, 5.0}};
  for (const PointMm about : abouts) {
    draw_small_marks(film, about);
  }
  draw_line(film, {{15.0, 0.0}, {38.0, 0.0}}, 0.05, -0.15);
  film.add_grain(grain, 3);
  std::vector<Mark> last;
  for (const double left_out_mm : {0.0, 3.0}) {
    film.film.along_begin_mm = left_out_mm;
    const MarkSearch search = film.search(clear);
    const std::vector<Mark> marks = told(search);
    last = search.marks;
    EXPECT_THAT(marks, SizeIs(2 * small_marks.size() + 1)) << left_out_mm;
    for (const PointMm about : abouts) {
      expect_small_marks(marks, about);
    }
    const Mark scratch = mark_at(marks, {26.5, 0.0}, 1.0);
    EXPECT_EQ(scratch.kind, MarkKind::scratch);
    EXPECT_NEAR(scratch.size_mm, 23.0, 2.0);
  }
  // Which thread takes which tile is chance; what is found isn't.
  EXPECT_EQ(film.search(clear).marks, last);
}

TEST(MarkLaws, CleanFilmHasNone) {
  for (const double sd : {0.005, 0.02, 0.06}) {
    for (std::uint32_t seed = 1; seed <= 2; ++seed) {
      DrawnDensity film = grey_film();
      film.add_grain(sd, seed);
      EXPECT_THAT(film.search(clear).marks, IsEmpty()) << sd << ' ' << seed;
    }
  }
}

// Grain hides marks; it makes none.
TEST(MarkLaws, MoreGrainAddsNoTellableMark) {
  std::vector<Mark> with_less = told(film_with_small_marks(0.005, 4).search(clear));
  EXPECT_THAT(with_less, SizeIs(small_marks.size()));
  for (const double sd : {0.02, 0.04, 0.08, 0.16}) {
    const std::vector<Mark> with_more = told(film_with_small_marks(sd, 4).search(clear));
    for (const Mark& mark : with_more) {
      EXPECT_EQ(mark_at(with_less, mark.middle, 0.1).kind, mark.kind) << sd;
    }
    with_less = with_more;
  }
}

TEST(MarkLaws, NothingIsToldOutsideTheWindow) {
  DrawnDensity film = film_with_small_marks(grain, 1);
  const auto corner = [&](PointMm at) { return film.film.map.scan_from_film(at); };
  film.film.window = {corner({6.0, -4.5}), corner({12.0, -4.5}), corner({12.0, 4.5}),
                      corner({6.0, 4.5})};
  const std::vector<Mark> marks = told(film.search(clear));
  EXPECT_THAT(marks, SizeIs(2));
  for (const Mark& mark : marks) {
    EXPECT_GT(mark.middle.along_mm, 6.0);
  }
}

TEST(MarkLaws, MarksInTheMarginAreNotTold) {
  DrawnDensity film = grey_film();
  for (const PointMm at : {PointMm{0.15, 0.0}, {11.85, 0.0}, {6.0, -4.35}, {6.0, 4.35}}) {
    film.draw_disc(at, 0.2, 1.2);
  }
  draw_line(film, {{2.0, 3.9}, {10.0, 3.9}}, 0.05, -0.2);
  film.add_grain(grain, 5);
  EXPECT_THAT(film.search(clear).marks, IsEmpty());
}

// A sliver of film, or none: there is nowhere to look.
TEST(MarkLaws, StripsWithoutRoomHaveNone) {
  for (const double length_mm : {0.0, 0.02, 0.3, 1.0}) {
    DrawnDensity film = film_with_small_marks(grain, 1);
    film.film.along_end_mm = film.film.along_begin_mm + length_mm;
    EXPECT_THAT(film.search(clear).marks, IsEmpty()) << length_mm;
  }
}

TEST(MarkLaws, CoarserScansTellTheSameBell) {
  for (const double pixels_per_mm : {12.0, 24.0, 48.0}) {
    DrawnDensity film(16.0, 12.0, pixels_per_mm, grey);
    film.draw_disc({7.0, 2.0}, 1.4, -0.3);
    film.add_grain(0.01, 6);
    const std::vector<Mark> marks = told(film.search(clear));
    ASSERT_THAT(marks, SizeIs(1)) << pixels_per_mm;
    EXPECT_EQ(marks[0].kind, MarkKind::air_bell);
    EXPECT_LT(distance_mm(marks[0].middle, {7.0, 2.0}), 0.5 / pixels_per_mm);
    // Of thin discs the outline lies 6 % inside.
    EXPECT_NEAR(marks[0].size_mm, 1.4, 0.07 * 1.4 + 1.0 / pixels_per_mm);
    EXPECT_NEAR(*marks[0].contrast_density, -0.3, 0.03);
  }
}

}  // namespace
}  // namespace fogline
