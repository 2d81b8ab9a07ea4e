#include "roll/reading/lost_channels.h"

#include "tables/shipped_knowledge.h"

#include <gtest/gtest.h>

namespace fogline {
namespace {

ScanInfo in_colour() {
  ScanInfo info;
  info.channels = 3;
  return info;
}

std::vector<StripReading> readings_of(const PerChannel<double>& bare,
                                      const PerChannel<double>& clear) {
  StripReading reading(shipped_knowledge().scan.devices);
  reading.zero_clipped_each = bare;
  reading.clear = ClearFilm{};
  reading.clear_clipped_each = clear;
  return {reading};
}

// Under yellow light red reaches the top in holes and film alike, and blue reads well.
TEST(LostChannels, AreThoseAtTheTopBesideOneThatReads) {
  const auto yellow = lost_channels(in_colour(), readings_of({1.0, 0.2, 0.0}, {0.9, 0.0, 0.0}));
  ASSERT_TRUE(yellow.has_value());
  EXPECT_EQ(*yellow, (LostChannels{true, false, false}));
  const auto two = lost_channels(in_colour(), readings_of({1.0, 0.8, 0.01}, {}));
  ASSERT_TRUE(two.has_value());
  EXPECT_EQ(*two, (LostChannels{true, true, false}));
  // Bare light at the top in all: clear film parts them.
  const auto red = lost_channels(in_colour(), readings_of({1.0, 1.0, 1.0}, {0.9, 0.01, 0.0}));
  ASSERT_TRUE(red.has_value());
  EXPECT_EQ(*red, (LostChannels{true, false, false}));
}

TEST(LostChannels, AreNoneWhereAllReadAlike) {
  EXPECT_FALSE(lost_channels(in_colour(), readings_of({1.0, 1.0, 1.0}, {0.9, 0.9, 0.9})));
  EXPECT_FALSE(lost_channels(in_colour(), readings_of({0.3, 0.0, 0.0}, {})));
  EXPECT_FALSE(lost_channels(in_colour(), readings_of({1.0, 0.3, 0.3}, {})));
  EXPECT_FALSE(lost_channels({}, readings_of({1.0, 0.0, 0.0}, {})));
}

TEST(LostChannels, ShowWhatTheOthersSee) {
  ScanGrid grid;
  grid.light = LightRaster(2, 1, 3);
  grid.clipped = Raster<std::uint8_t>(2, 1);
  grid.clipped.at(0, 0) = 0x33;
  for (int c = 0; c < 3; ++c) {
    grid.light.set_light(0, 0, c, c == 0 ? 1.0F : 0.2F);
    grid.light.set_light(1, 0, c, 0.1F * static_cast<float>(c + 1));
  }
  leave_channels_out(grid, {true, false, false});
  EXPECT_NEAR(grid.light.light(0, 0, 0), 0.2F, 1e-4F);
  const double green = visual_weights[1] / (visual_weights[1] + visual_weights[2]);
  EXPECT_NEAR(grid.light.light(1, 0, 0), 0.2 * green + 0.3 * (1.0 - green), 1e-4);
  EXPECT_NEAR(grid.light.light(1, 0, 2), 0.3F, 1e-4F);
  // Green's own bits stay.
  EXPECT_EQ(grid.clipped.at(0, 0), 0x22);
}

}  // namespace
}  // namespace fogline
