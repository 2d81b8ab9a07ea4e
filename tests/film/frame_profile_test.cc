#include "film/frames/frame_profile.h"

#include "film/drawn_straight.h"

#include <algorithm>

#include <gtest/gtest.h>

namespace fogline {
namespace {

/// A bare picture from 12 to 48 mm on 60 mm of clear film, evenly denser than it.
drawn::Strip one_picture(double net_density) {
  drawn::Strip strip;
  strip.perforated = false;
  strip.end_mm = 60.0;
  strip.patches = {{{12.0, 48.0, -12.0, 12.0}, net_density}};
  return strip;
}

drawn::Laid nothing_beyond(double pixels_per_mm = 10.0) {
  return {.pixels_per_mm = pixels_per_mm, .beyond_mm = 0.0};
}

std::ptrdiff_t place_of_greatest(const std::vector<double>& values) {
  return std::max_element(values.begin(), values.end()) - values.begin();
}

TEST(FrameProfile, ABorderShowsAtItsColumnOverItsWholeHeight) {
  for (const double pixels_per_mm : {5.0, 10.0, 16.0}) {
    SCOPED_TRACE(pixels_per_mm);
    const ExcessImage image = drawn::excess_of(one_picture(0.3), nothing_beyond(pixels_per_mm));
    const FrameProfile profile = frame_profile(image, -11.0, 11.0, 0.0);
    const auto begin = static_cast<std::size_t>(12.0 * pixels_per_mm);
    const auto end = static_cast<std::size_t>(48.0 * pixels_per_mm);
    EXPECT_EQ(profile.rises[begin], 1.0);
    EXPECT_EQ(profile.falls[end], 1.0);
    EXPECT_EQ(profile.rises[end], 0.0);
    EXPECT_EQ(profile.falls[begin], 0.0);
    // The step is the picture's density, and steepest where the border lies.
    EXPECT_EQ(place_of_greatest(profile.step), static_cast<std::ptrdiff_t>(begin));
    EXPECT_NEAR(profile.step[begin], 0.3, 1e-6);
    EXPECT_NEAR(profile.step[end], -0.3, 1e-6);
  }
}

// Half a millimetre from a border and more nothing steps.
TEST(FrameProfile, NoBorderShowsElsewhere) {
  const FrameProfile profile =
      frame_profile(drawn::excess_of(one_picture(0.3), nothing_beyond()), -11.0, 11.0, 0.0);
  for (std::size_t i = 0; i < profile.step.size(); ++i) {
    const double at = 0.1 * static_cast<double>(i);
    if (std::min(std::abs(at - 12.0), std::abs(at - 48.0)) > 0.5) {
      EXPECT_EQ(profile.rises[i] + profile.falls[i], 0.0) << at;
      EXPECT_NEAR(profile.step[i], 0.0, 1e-6) << at;
    }
  }
}

TEST(FrameProfile, PictureAndClearFilmSpeakForThemselves) {
  const FrameProfile profile =
      frame_profile(drawn::excess_of(one_picture(0.3), nothing_beyond()), -11.0, 11.0, 0.0);
  for (std::size_t i = 0; i < profile.picture.size(); ++i) {
    const double middle = 0.1 * (static_cast<double>(i) + 0.5);
    // Smoothing reaches one column over each border.
    if (std::min(std::abs(middle - 12.0), std::abs(middle - 48.0)) > 0.2) {
      EXPECT_EQ(profile.picture[i] > 0.0, middle > 12.0 && middle < 48.0) << middle;
    }
  }
}

// A picture that fills half of the height shows half of a border, to one of the pieces of a
// millimetre in which the height is judged.
TEST(FrameProfile, HalfABorderCountsAsHalf) {
  drawn::Strip strip = one_picture(0.3);
  strip.patches[0].area.across_end_mm = 0.0;
  const FrameProfile profile =
      frame_profile(drawn::excess_of(strip, nothing_beyond()), -11.0, 11.0, 0.0);
  EXPECT_NEAR(profile.rises[120], 0.5, 1.0 / 22.0);
  EXPECT_NEAR(profile.falls[480], 0.5, 1.0 / 22.0);
}

// One lamp in a night scene mustn't draw a border to itself: no piece's step counts beyond 0.4.
TEST(FrameProfile, AGreatStepCountsNoMoreThanAnother) {
  const FrameProfile profile =
      frame_profile(drawn::excess_of(one_picture(2.5), nothing_beyond()), -11.0, 11.0, 0.0);
  EXPECT_NEAR(profile.step[120], 0.4, 1e-6);
}

// Nothing is told of what isn't film, and the end of the film is no border of a picture.
TEST(FrameProfile, TheEndOfTheFilmIsNoBorder) {
  drawn::Strip strip = one_picture(0.3);
  strip.patches[0].area.along_begin_mm = 0.0;
  const FrameProfile profile =
      frame_profile(drawn::excess_of(strip, {.beyond_mm = 3.0}), -11.0, 11.0, 0.0);
  ASSERT_EQ(profile.film.size(), 660U);
  for (std::size_t i = 0; i < profile.film.size(); ++i) {
    EXPECT_EQ(profile.film[i], i >= 30 && i < 630) << i;
    if (!profile.film[i]) {
      EXPECT_EQ(profile.picture[i], 0.0) << i;
    }
  }
  EXPECT_EQ(*std::max_element(profile.rises.begin(), profile.rises.end()), 0.0);
  EXPECT_EQ(profile.falls[30 + 480], 1.0);
}

// Grain of any size, told as noise, is never picture nor border.
TEST(FrameProfile, GrainIsNeitherPictureNorBorder) {
  drawn::Strip strip = one_picture(0.0);
  for (const double grain : {0.01, 0.05, 0.16}) {
    for (const std::uint32_t seed : {1U, 2U, 3U}) {
      drawn::Laid laid = nothing_beyond();
      laid.grain_density = grain;
      laid.seed = seed;
      const FrameProfile profile = frame_profile(drawn::excess_of(strip, laid), -11.0, 11.0, grain);
      for (std::size_t i = 0; i < profile.picture.size(); ++i) {
        EXPECT_LT(profile.picture[i], 0.0) << grain << ' ' << i;
        // One piece of 22 may step by chance.
        EXPECT_LT(profile.rises[i] + profile.falls[i], 0.1) << grain << ' ' << i;
      }
    }
  }
}

// Turned end for end, what rose falls, at the mirrored side of the column.
TEST(FrameProfile, MirroredFilmGivesTheMirroredProfile) {
  drawn::Strip strip = one_picture(0.4);
  strip.frames = {strip.frame(2.0, 8.0)};
  drawn::Laid laid = nothing_beyond();
  laid.grain_density = 0.02;
  ExcessImage image = drawn::excess_of(strip, laid);
  const FrameProfile there = frame_profile(image, -11.0, 11.0, 0.02);
  cv::Mat1f flipped;
  cv::flip(image.excess, flipped, 1);
  image.excess = flipped;
  const FrameProfile back = frame_profile(image, -11.0, 11.0, 0.02);
  const std::size_t size = there.picture.size();
  for (std::size_t i = 0; i < size; ++i) {
    EXPECT_NEAR(back.picture[i], there.picture[size - 1 - i], 1e-9) << i;
    if (i > 0) {
      EXPECT_EQ(back.rises[i], there.falls[size - i]) << i;
      EXPECT_NEAR(back.step[i], -there.step[size - i], 1e-6) << i;
    }
  }
}

TEST(ExcessImage, PlacesBeyondItAreHeldAtItsSides) {
  const ExcessImage image = drawn::excess_of(one_picture(0.3), {.beyond_mm = 3.0});
  EXPECT_EQ(image.column(-3.0), 0);
  EXPECT_EQ(image.column(-100.0), 0);
  EXPECT_EQ(image.column(12.05), 150);
  EXPECT_EQ(image.column(1000.0), image.excess.cols - 1);
  EXPECT_EQ(image.row(-100.0), 0);
  EXPECT_EQ(image.row(100.0), image.excess.rows - 1);
  EXPECT_NEAR(image.along_mm(image.column(12.05)), 12.05, 1e-9);
}

}  // namespace
}  // namespace fogline
