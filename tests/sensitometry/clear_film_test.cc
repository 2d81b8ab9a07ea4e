#include "sensitometry/clear_film.h"

#include "sensitometry/density_film.h"

#include <algorithm>
#include <cmath>

#include <gtest/gtest.h>

namespace fogline {
namespace {

using drawn::base_density;

FilmFrame frame_at(double begin_mm, bool inferred = false) {
  FilmFrame frame;
  frame.along_begin_mm = begin_mm;
  frame.along_end_mm = begin_mm + 36.0;
  frame.across_begin_mm = -12.0;
  frame.across_end_mm = 12.0;
  frame.inferred = inferred;
  return frame;
}

bool overlap(const FilmExtent& a, const FilmExtent& b) {
  return a.along_begin_mm < b.along_end_mm && b.along_begin_mm < a.along_end_mm &&
         a.across_begin_mm < b.across_end_mm && b.across_begin_mm < a.across_end_mm;
}

/// The bridge that follows a perforation, hole to hole.
FilmExtent bridge_after(const Perforation& hole) {
  const double begin = hole.film.along_mm + film_135::hole_along_mm / 2.0;
  const double half = film_135::hole_across_mm / 2.0;
  return {begin, hole.film.along_mm + film_135::pitch_mm - film_135::hole_along_mm / 2.0,
          hole.film.across_mm - half, hole.film.across_mm + half};
}

TEST(ClearPatches, KeepTheirDistance) {
  FilmStrip film = drawn::perforated_film();
  film.frames = {frame_at(1.0), frame_at(39.0), frame_at(77.0)};
  const std::vector<ClearPatch> patches = clear_patches(film);
  EXPECT_GT(patches.size(), film.perforations.size() - 4);
  for (const ClearPatch& patch : patches) {
    EXPECT_GT(patch.area.along_begin_mm, film.along_begin_mm);
    EXPECT_LT(patch.area.along_end_mm, film.along_end_mm);
    EXPECT_GT(patch.area.across_begin_mm, film.across_begin_mm);
    EXPECT_LT(patch.area.across_end_mm, film.across_end_mm);
    for (const Perforation& hole : film.perforations) {
      // A hole and 0.5 mm round it, along the film, where a bridge ends (less rounding).
      const double reach = film_135::hole_along_mm / 2.0 + 0.499;
      const double half = film_135::hole_across_mm / 2.0;
      EXPECT_FALSE(overlap(patch.area, {hole.film.along_mm - reach, hole.film.along_mm + reach,
                                        hole.film.across_mm - half, hole.film.across_mm + half}));
    }
    for (const FilmFrame& frame : film.frames) {
      EXPECT_FALSE(
          overlap(patch.area, {frame.along_begin_mm - 0.399, frame.along_end_mm + 0.399,
                               frame.across_begin_mm - 0.399, frame.across_end_mm + 0.399}));
    }
  }
  const auto between = std::count_if(patches.begin(), patches.end(), [](const ClearPatch& patch) {
    return patch.source == BaseFogSource::between_frames;
  });
  EXPECT_EQ(between, 10);  // two gaps, five pieces of 4 mm over each
}

TEST(ClearPatches, LeaveTheFoggedLeaderOut) {
  FilmStrip film = drawn::perforated_film();
  film.leaders = {{0.0, 40.0, film.across_begin_mm, film.across_end_mm}};
  const std::vector<ClearPatch> patches = clear_patches(film);
  ASSERT_FALSE(patches.empty());
  for (const ClearPatch& patch : patches) {
    EXPECT_GE(patch.area.along_begin_mm, 40.0);
  }
}

TEST(ClearFilm, OfACleanStrip) {
  const FilmStrip film = drawn::perforated_film();
  const std::optional<ClearFilm> clear =
      read_clear_film(drawn::clear_density(film), clear_patches(film));
  ASSERT_TRUE(clear.has_value());
  EXPECT_NEAR(clear->visual, base_density, 0.001);
  EXPECT_NEAR(clear->density[0], base_density - 0.02, 0.001);
  EXPECT_NEAR(clear->density[1], base_density, 0.001);
  EXPECT_NEAR(clear->density[2], base_density + 0.03, 0.001);
  EXPECT_LT(clear->scatter, 0.001);
  EXPECT_EQ(clear->source, BaseFogSource::rebate);
  EXPECT_EQ(clear->used.size(), clear_patches(film).size());
  // 46 bridges of 1.769 x 1.794 mm between the holes of two rows; the last hole of a row has one
  // where film follows.
  const double bridge_mm2 =
      (film_135::pitch_mm - film_135::hole_along_mm - 1.0) * (film_135::hole_across_mm - 1.0);
  EXPECT_NEAR(clear->area_mm2, 48.0 * bridge_mm2, 2.0 * bridge_mm2);
}

// A quarter of the bridges printed, a quarter fogged by stray light of the camera.
TEST(ClearFilm, LeavesPrintedAndFoggedPatchesOut) {
  const FilmStrip film = drawn::perforated_film();
  DensityStrip density = drawn::clear_density(film);
  std::vector<FilmExtent> spoilt;
  for (std::size_t i = 0; i < film.perforations.size(); ++i) {
    if (i % 4 < 2) {
      spoilt.push_back(bridge_after(film.perforations[i]));
      drawn::add_density(density, spoilt.back(), i % 4 == 0 ? 0.9 : 0.12);
    }
  }
  const std::optional<ClearFilm> clear = read_clear_film(density, clear_patches(film));
  ASSERT_TRUE(clear.has_value());
  EXPECT_NEAR(clear->visual, base_density, 0.001);
  EXPECT_GT(clear->used.size(), 20U);
  for (const ClearPatch& patch : clear->used) {
    for (const FilmExtent& area : spoilt) {
      EXPECT_FALSE(overlap(patch.area, area));
    }
  }
}

// Film without perforations in sight is read beside its frames.
TEST(ClearFilm, OfABlankFrame) {
  FilmStrip film = drawn::perforated_film();
  film.perforations.clear();
  film.frames = {frame_at(1.0), frame_at(39.0, true), frame_at(77.0)};
  film.across_begin_mm = -12.2;
  film.across_end_mm = 12.2;
  DensityStrip density = drawn::clear_density(film);
  drawn::add_density(density, {1.0, 37.0, -12.0, 12.0}, 0.6);
  drawn::add_density(density, {77.0, 113.0, -12.0, 12.0}, 0.6);
  const std::optional<ClearFilm> clear = read_clear_film(density, clear_patches(film));
  ASSERT_TRUE(clear.has_value());
  EXPECT_NEAR(clear->visual, base_density, 0.001);
  EXPECT_EQ(clear->source, BaseFogSource::unexposed_frame);
}

TEST(ClearFilm, NeedsAPatchInSight) {
  const FilmStrip film = drawn::perforated_film();
  EXPECT_FALSE(read_clear_film(drawn::clear_density(film), {}).has_value());
  DensityStrip unknown = drawn::clear_density(film);
  std::fill(unknown.visual.samples().begin(), unknown.visual.samples().end(), NAN);
  EXPECT_FALSE(read_clear_film(unknown, clear_patches(film)).has_value());
}

}  // namespace
}  // namespace fogline
