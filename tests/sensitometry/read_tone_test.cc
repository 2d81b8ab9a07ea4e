#include "sensitometry/read_tone.h"

#include "base/seeded_noise.h"
#include "sensitometry/density_film.h"

#include <algorithm>
#include <cmath>
#include <vector>

#include <gtest/gtest.h>

namespace fogline {
namespace {

FilmFrame whole_frame() {
  FilmFrame frame;
  frame.along_begin_mm = 2.0;
  frame.along_end_mm = 38.0;
  frame.across_begin_mm = -12.0;
  frame.across_end_mm = 12.0;
  return frame;
}

/// A frame of random densities, whose values over `area` go to `inside`; two spots beyond the area
/// begins a density that no frame holds.
DensityStrip random_picture(std::vector<double>& inside, const FilmExtent& area) {
  const FilmStrip film = drawn::perforated_film();
  DensityStrip density = drawn::clear_density(film, 0.0);
  SeededNoise noise(23);
  for (int y = 0; y < density.visual.height(); ++y) {
    for (int x = 0; x < density.visual.width(); ++x) {
      const double s = density.along_mm(x);
      const double t = density.across_mm(y);
      const auto within = [&](double margin_mm) {
        return s > area.along_begin_mm - margin_mm && s < area.along_end_mm + margin_mm &&
               t > area.across_begin_mm - margin_mm && t < area.across_end_mm + margin_mm;
      };
      const auto value = static_cast<float>(0.3 + 1.2 * noise.uniform() * noise.uniform());
      density.visual.at(x, y) = within(0.2) ? value : 4.0F;
      if (within(0.0)) {
        inside.push_back(static_cast<double>(value));
      }
    }
  }
  return density;
}

/// Order statistics by sorting, linear between neighbours (Hyndman & Fan 1996, type 7).
double by_sorting(std::vector<double> values, double share) {
  std::sort(values.begin(), values.end());
  const double rank = share * static_cast<double>(values.size() - 1);
  const auto low = static_cast<std::size_t>(rank);
  const std::size_t high = std::min(low + 1, values.size() - 1);
  return values[low] + (rank - static_cast<double>(low)) * (values[high] - values[low]);
}

TEST(ToneArea, LeavesABorderOut) {
  const std::optional<FilmExtent> area = tone_area(whole_frame());
  ASSERT_TRUE(area.has_value());
  EXPECT_NEAR(area->along_begin_mm, 2.7, 1e-12);
  EXPECT_NEAR(area->along_end_mm, 37.3, 1e-12);
  EXPECT_NEAR(area->across_begin_mm, -11.3, 1e-12);
  EXPECT_NEAR(area->across_end_mm, 11.3, 1e-12);
  FilmFrame narrow = whole_frame();
  narrow.along_end_mm = narrow.along_begin_mm + 3.0;
  EXPECT_FALSE(tone_area(narrow).has_value());
}

TEST(ReadTone, IsTheFramesPercentiles) {
  const FilmExtent area{2.7, 37.3, -11.3, 11.3};
  std::vector<double> inside;
  const DensityStrip density = random_picture(inside, area);
  DoubtSources doubt;
  doubt.zero_density = 0.01;
  const FrameTone tone = read_tone(density, area, 0.27, doubt, 3.0);
  ASSERT_TRUE(tone.shadow && tone.middle && tone.highlight && tone.range && tone.paper_range);
  // The area's borders may fall on either side of a row of spots: one row in 226.
  EXPECT_NEAR(tone.shadow->value, by_sorting(inside, 0.02), 0.001);
  EXPECT_NEAR(tone.middle->value, by_sorting(inside, 0.50), 0.002);
  EXPECT_NEAR(tone.highlight->value, by_sorting(inside, 0.98), 0.003);
  EXPECT_NEAR(tone.range->value, tone.highlight->value - tone.shadow->value, 1e-12);
  EXPECT_EQ(*tone.paper_range, tone.range->value);
  EXPECT_NEAR(tone.middle->u95, 1.96 * 0.01, 1e-9);
  EXPECT_FALSE(tone.highlight->at_least);
}

// Two fifths of the frame are denser than the scan can tell: the middle is still a number, the
// highlight a lower bound.
TEST(ReadTone, TellsALowerBoundBeyondTheLimit) {
  const FilmStrip film = drawn::perforated_film();
  DensityStrip density = drawn::clear_density(film, 0.0);
  drawn::add_density(density, {2.0, 38.0, -12.0, 12.0}, 0.5);
  drawn::add_density(density, {24.0, 38.0, -12.0, 12.0}, 2.5);
  DoubtSources doubt;
  doubt.stray_transmittance = 0.005;
  const FrameTone tone = read_tone(density, {2.7, 37.3, -11.3, 11.3}, 0.27, doubt, 1.9);
  ASSERT_TRUE(tone.highlight && tone.middle && tone.range);
  EXPECT_NEAR(tone.middle->value, 0.77, 1e-4);
  EXPECT_FALSE(tone.middle->at_least);
  EXPECT_EQ(tone.highlight->value, 1.9);
  EXPECT_TRUE(tone.highlight->at_least);
  EXPECT_FALSE(tone.highlight->upper95.has_value());
  ASSERT_TRUE(tone.highlight->lower95.has_value());
  EXPECT_LT(*tone.highlight->lower95, 1.9);
  EXPECT_TRUE(tone.range->at_least);
  EXPECT_FALSE(tone.paper_range.has_value());
}

TEST(ReadTone, CountsInfinitelyDenseSpotsAndLeavesUnknownOnesOut) {
  const FilmStrip film = drawn::perforated_film();
  DensityStrip density = drawn::clear_density(film, 0.0);
  for (int y = 0; y < density.visual.height(); ++y) {
    for (int x = density.column(2.0); x < density.column(38.0); ++x) {
      const int kind = (x + y) % 10;
      density.visual.at(x, y) = kind < 5 ? NAN : kind < 7 ? INFINITY : 0.8F;
    }
  }
  const FrameTone tone = read_tone(density, {2.7, 37.3, -11.3, 11.3}, 0.27, {}, 2.5);
  ASSERT_TRUE(tone.middle && tone.highlight);
  EXPECT_NEAR(tone.middle->value, 0.8, 1e-6);
  EXPECT_TRUE(tone.highlight->at_least);
}

TEST(ReadTone, OfNothingIsNothing) {
  DensityStrip density = drawn::clear_density(drawn::perforated_film(), 0.0);
  std::fill(density.visual.samples().begin(), density.visual.samples().end(), NAN);
  const FrameTone tone = read_tone(density, {2.7, 37.3, -11.3, 11.3}, 0.27, {}, 2.5);
  EXPECT_FALSE(tone.shadow.has_value());
  EXPECT_FALSE(tone.range.has_value());
}

}  // namespace
}  // namespace fogline
