#include "film/frames/even_gaps.h"

#include "film/drawn_straight.h"

#include <algorithm>

#include <gtest/gtest.h>

namespace fogline {
namespace {

/// Two pictures of density 1 with a gap between them from 40 to 42 mm that reads `gap_density`.
FrameProfile profile_with_gap(double gap_density, double uneven_density = 0.0) {
  drawn::Strip strip;
  strip.perforated = false;
  strip.end_mm = 84.0;
  strip.patches = {{{2.0, 40.0, -12.0, 12.0}, 1.0},
                   {{40.0, 42.0, -12.0, 0.0}, gap_density},
                   {{40.0, 42.0, 0.0, 12.0}, gap_density + uneven_density},
                   {{42.0, 82.0, -12.0, 12.0}, 1.0}};
  const drawn::Laid laid{.pixels_per_mm = 10.0, .beyond_mm = 0.0};
  return frame_profile(drawn::excess_of(strip, laid), -11.0, 11.0, 0.01);
}

double at_mm(const FrameProfile& profile, double along_mm) {
  return profile.picture[static_cast<std::size_t>(along_mm * profile.pixels_per_mm)];
}

TEST(EvenGaps, AGapInFallingLightIsAGap) {
  for (const double density : {0.1, 0.2, 0.3}) {
    const FrameProfile profile = profile_with_gap(density);
    EXPECT_EQ(at_mm(profile, 41.0), FrameProfile::clear_ratio) << density;
    EXPECT_GT(at_mm(profile, 39.0), 0.0) << density;
    EXPECT_GT(at_mm(profile, 43.0), 0.0) << density;
  }
}

// A dense stripe is picture, and so is one whose halves differ.
TEST(EvenGaps, OtherStripesArePicture) {
  EXPECT_GT(at_mm(profile_with_gap(0.5), 41.0), 0.0);
  EXPECT_GT(at_mm(profile_with_gap(0.1, 0.3), 41.0), 0.0);
}

}  // namespace
}  // namespace fogline
