#include "marks/spot_peaks.h"

#include "marks/drawn_marks.h"

#include <algorithm>
#include <cmath>
#include <iterator>

#include <gmock/gmock.h>
#include <gtest/gtest.h>

namespace fogline {
namespace {

using testing::IsEmpty;

constexpr double pixels_per_mm = 24.0;
constexpr double clear = 0.3;
constexpr double grain = 0.02;
constexpr double largest_mm = 3.2;

DrawnDensity grey_film() {
  return {16.0, 12.0, pixels_per_mm, 1.0};
}

std::vector<SpotPeak> peaks_of(const DrawnDensity& film) {
  return spot_peaks(film.tile(clear), 0.0, largest_mm);
}

/// Peaks within so many millimetres of a place.
std::vector<SpotPeak> near(const std::vector<SpotPeak>& peaks, const MarkTile& tile, PointMm at,
                           double reach_mm) {
  std::vector<SpotPeak> found;
  std::copy_if(peaks.begin(), peaks.end(), std::back_inserter(found), [&](const SpotPeak& peak) {
    return distance_mm(tile.film(peak.at.x, peak.at.y), at) < reach_mm;
  });
  return found;
}

TEST(SpotPeaks, EvenFilmAndSlopesHaveNone) {
  EXPECT_THAT(peaks_of(grey_film()), IsEmpty());
  DrawnDensity slope = grey_film();
  slope.draw([](PointMm at, double density) { return density + 0.03 * at.along_mm; });
  EXPECT_THAT(peaks_of(slope), IsEmpty());
}

TEST(SpotPeaks, GrainHasNone) {
  for (std::uint32_t seed = 1; seed <= 5; ++seed) {
    DrawnDensity film = grey_film();
    film.add_grain(grain, seed);
    EXPECT_THAT(peaks_of(film), IsEmpty()) << seed;
  }
}

TEST(SpotPeaks, DiscIsFoundAtItsPlaceWithItsSign) {
  for (const double diameter_mm : {0.15, 0.4, 1.0, 2.5}) {
    for (const double contrast : {0.3, -0.3}) {
      DrawnDensity film = grey_film();
      const PointMm middle{7.0, -1.0};
      film.draw_disc(middle, diameter_mm, contrast);
      film.add_grain(grain, 6);
      // A peak is known to a pixel of its level: half of such a pixel's diagonal.
      const double reach_mm = std::max(1.0 / pixels_per_mm, 0.3 * diameter_mm);
      const std::vector<SpotPeak> peaks = near(peaks_of(film), film.tile(clear), middle, reach_mm);
      ASSERT_FALSE(peaks.empty()) << diameter_mm << ' ' << contrast;
      for (const SpotPeak& peak : peaks) {
        EXPECT_GT(peak.response * contrast, 0.0) << diameter_mm;
        EXPECT_LT(std::abs(peak.response), std::abs(contrast)) << diameter_mm;
      }
    }
  }
}

/// Size at which a disc answers most.
double answering_mm(double diameter_mm) {
  DrawnDensity film = grey_film();
  film.draw_disc({8.0, 0.0}, diameter_mm, 0.4);
  const std::vector<SpotPeak> peaks =
      near(peaks_of(film), film.tile(clear), {8.0, 0.0}, 0.3 * diameter_mm);
  const auto most = std::max_element(
      peaks.begin(), peaks.end(),
      [](const SpotPeak& a, const SpotPeak& b) { return a.response < b.response; });
  return most == peaks.end() ? 0.0 : most->diameter_mm;
}

// Sizes are tried in steps of a half octave.
TEST(SpotPeaks, SizeGrowsWithTheDisc) {
  for (const double diameter_mm : {0.3, 0.6, 1.2}) {
    const double size_mm = answering_mm(diameter_mm);
    EXPECT_GT(size_mm, 0.5 * diameter_mm);
    EXPECT_LT(size_mm, 1.4 * diameter_mm);
    EXPECT_NEAR(answering_mm(2.0 * diameter_mm) / size_mm, 2.0, 0.1) << diameter_mm;
  }
}

TEST(SpotPeaks, StrongestComeFirst) {
  DrawnDensity film = grey_film();
  film.draw_disc({4.0, -2.0}, 0.4, 0.15);
  film.draw_disc({8.0, 2.0}, 0.4, 0.6);
  film.draw_disc({12.0, -2.0}, 0.4, 0.3);
  film.add_grain(grain, 7);
  const std::vector<SpotPeak> peaks = peaks_of(film);
  ASSERT_GE(peaks.size(), 3U);
  EXPECT_TRUE(std::is_sorted(peaks.begin(), peaks.end(), [](const SpotPeak& a, const SpotPeak& b) {
    return a.sigmas > b.sigmas;
  }));
  EXPECT_LT(distance_mm(film.tile(clear).film(peaks[0].at.x, peaks[0].at.y), {8.0, 2.0}), 0.12);
}

TEST(SpotPeaks, OnlySizesAskedForAreTried) {
  DrawnDensity film = grey_film();
  film.draw_disc({5.0, 0.0}, 0.15, 0.2);
  film.draw_disc({11.0, 0.0}, 2.0, 0.5);
  const MarkTile tile = film.tile(clear);
  EXPECT_THAT(near(spot_peaks(tile, 0.8, largest_mm), tile, {5.0, 0.0}, 0.2), IsEmpty());
  const std::vector<SpotPeak> small = spot_peaks(tile, 0.0, 0.4);
  EXPECT_FALSE(near(small, tile, {5.0, 0.0}, 0.1).empty());
  EXPECT_TRUE(std::all_of(small.begin(), small.end(),
                          [](const SpotPeak& peak) { return peak.diameter_mm <= 0.4; }));
}

TEST(SpotPeaks, MaskedFilmAnswersNothing) {
  DrawnDensity film = grey_film();
  film.draw_disc({5.0, 0.0}, 0.4, 0.5);
  film.draw_disc({11.0, 0.0}, 0.4, 0.5);
  MarkTile tile = film.tile(clear);
  tile.usable.colRange(0, tile.usable.cols / 2).setTo(0);
  const std::vector<SpotPeak> peaks = spot_peaks(tile, 0.0, largest_mm);
  EXPECT_THAT(near(peaks, tile, {5.0, 0.0}, 0.4), IsEmpty());
  EXPECT_FALSE(near(peaks, tile, {11.0, 0.0}, 0.1).empty());
}

TEST(SpotPeaks, EmptyTileHasNone) {
  MarkTile tile = grey_film().tile(clear);
  tile.usable.setTo(0);
  EXPECT_THAT(spot_peaks(tile, 0.0, largest_mm), IsEmpty());
}

/// The greatest answer in sigmas of the disc at 8 mm.
double sigmas_at_middle(const DrawnDensity& film) {
  double most = 0.0;
  for (const SpotPeak& peak : near(peaks_of(film), film.tile(clear), {8.0, 0.0}, 0.1)) {
    most = std::max(most, peak.sigmas);
  }
  return most;
}

TEST(SpotPeaks, BusyPictureRaisesTheThreshold) {
  DrawnDensity alone = grey_film();
  alone.draw_disc({8.0, 0.0}, 0.4, 0.3);
  alone.add_grain(grain, 8);
  DrawnDensity busy = grey_film();
  busy.draw_disc({8.0, 0.0}, 0.4, 0.3);
  SeededNoise places(8);
  for (int i = 0; i < 200; ++i) {
    const PointMm at{places.uniform(1.0, 15.0), places.uniform(-5.0, 5.0)};
    if (distance_mm(at, {8.0, 0.0}) > 0.8) {
      busy.draw_disc(at, 0.4, 0.3);
    }
  }
  busy.add_grain(grain, 8);
  EXPECT_GT(sigmas_at_middle(alone), 3.0 * sigmas_at_middle(busy));
}

TEST(SpotPeaks, CrowdCountsTheLikeNearby) {
  DrawnDensity film = grey_film();
  film.draw_disc({4.0, 0.0}, 0.3, 0.4);
  for (int i = 0; i < 5; ++i) {
    film.draw_disc({11.0 + 0.8 * i, 1.0}, 0.3, 0.4);
  }
  // Far weaker ones are no company.
  film.draw_disc({4.0, 1.5}, 0.3, 0.08);
  const MarkTile tile = film.tile(clear);
  const std::vector<SpotPeak> peaks = spot_peaks(tile, 0.0, 0.5);
  const std::vector<SpotPeak> lonely = near(peaks, tile, {4.0, 0.0}, 0.1);
  const std::vector<SpotPeak> one_of_five = near(peaks, tile, {12.6, 1.0}, 0.1);
  ASSERT_FALSE(lonely.empty());
  ASSERT_FALSE(one_of_five.empty());
  EXPECT_EQ(lonely[0].crowd, 0);
  EXPECT_GE(one_of_five[0].crowd, 4);
}

}  // namespace
}  // namespace fogline
