#include "base/seeded_noise.h"
#include "base/within_doubt.h"
#include "film/drawn_scan.h"
#include "roll/reading/scan_reading.h"
#include "tables/shipped_knowledge.h"
#include "tint/judge_tint.h"

#include <algorithm>
#include <array>
#include <string>

#include <gtest/gtest.h>

namespace fogline {
namespace {

using drawn::Scan;
using drawn::Strip;

/// A drawn scan in colour: film of one silver picture on a base of its own density per channel.
class ColourSource : public ScanSource {
 public:
  ColourSource(const Scan& scan, const PerChannel<double>& base, const PerChannel<double>& lamp,
               const ScanInfo& info)
      : info_(info) {
    // Drawn once: where there is film, a channel's base takes its share of the light.
    Scan plain = scan;
    plain.bare_light = 1.0;
    plain.grain_density = 0.0;
    const Raster<float> drawn = drawn::light_of(plain);
    const double drawn_base = transmittance_from_density(scan.strips[0].base_density);
    SeededNoise noise(1);
    for (Raster<float>& plane : light_) {
      plane = drawn;
    }
    for (std::size_t i = 0; i < drawn.samples().size(); ++i) {
      const auto light = static_cast<double>(drawn.samples()[i]);
      const double grain = transmittance_from_density(noise.normal(scan.grain_density));
      // Linear between bare light and drawn base, in proportion below: edges of film are mixed.
      const double bare = std::clamp((light - drawn_base) / (1.0 - drawn_base), 0.0, 1.0);
      for (std::size_t c = 0; c < base.size(); ++c) {
        const double through = std::min(light, drawn_base) / drawn_base;
        const double film = through * transmittance_from_density(base[c]);
        light_[c].samples()[i] = static_cast<float>(lamp[c] * grain * (bare + (1.0 - bare) * film));
      }
    }
    info_.width_px = scan.width_px;
    info_.height_px = scan.height_px;
  }

  [[nodiscard]] const ScanInfo& info() const override { return info_; }
  void set_transfer(const Transfer& transfer) override { info_.transfer = transfer; }

  [[nodiscard]] double code_of(double light, int /*channel*/) const override { return light; }

  ScanGrid survey(const SurveyPlan& /*plan*/, const Progress& /*progress*/) override {
    ScanGrid grid = drawn::grid_of(light_[0], info_.channels);
    for (int c = 1; c < info_.channels; ++c) {
      const Raster<float>& plane = light_[static_cast<std::size_t>(c)];
      for (int y = 0; y < plane.height(); ++y) {
        for (int x = 0; x < plane.width(); ++x) {
          grid.light.set_light(x, y, c, plane.at(x, y));
        }
      }
    }
    return grid;
  }

 private:
  ScanInfo info_;
  std::array<Raster<float>, most_channels> light_;
};

constexpr double pixels_per_mm = 7.0;

Scan one_frame() {
  Strip strip;
  strip.end_mm = 48.0;
  strip.frames = {strip.frame(6.0)};
  return drawn::scan_of(strip, pixels_per_mm);
}

/// Two frames with clear film between them.
Scan two_frames() {
  Strip strip;
  strip.end_mm = 80.0;
  strip.frames = {strip.frame(2.0), strip.frame(40.5)};
  return drawn::scan_of(strip, pixels_per_mm);
}

ScanInfo linear_info(int channels = most_channels) {
  ScanInfo info;
  info.file = "drawn";
  info.bits = 16;
  info.samples_per_pixel = channels;
  info.channels = channels;
  info.transfer = {TransferKind::linear, {}, TransferSource::icc_profile};
  return info;
}

Tint tint_of(const PerChannel<double>& base, const PerChannel<double>& lamp, const ScanInfo& info,
             const Scan& scan = one_frame()) {
  ColourSource source(scan, base, lamp, info);
  return read_one_scan(source, shipped_options(), 1, {}).scan.tint;
}

constexpr PerChannel<double> grey_base{0.28, 0.28, 0.28};
constexpr PerChannel<double> pink_base{0.28, 0.36, 0.29};
constexpr PerChannel<double> white_lamp{0.8, 0.8, 0.8};

TEST(ScanTint, TellsDyeFromCleanFilm) {
  EXPECT_EQ(tint_of(grey_base, white_lamp, linear_info()).kind, TintKind::none);
  const Tint pink = tint_of(pink_base, white_lamp, linear_info());
  EXPECT_EQ(pink.kind, TintKind::dye_left);
  test::expect_within_doubt(*pink.density, 0.08, 0.06);
  EXPECT_TRUE(pink.may_be_stock);
}

TEST(ScanTint, IsSilentAboutTheLampsColour) {
  const PerChannel<double> pink_lamp{0.8, 0.6, 0.75};
  EXPECT_EQ(tint_of(grey_base, pink_lamp, linear_info()).kind, TintKind::none);
  const Tint white = tint_of(pink_base, white_lamp, linear_info());
  const Tint pink = tint_of(pink_base, pink_lamp, linear_info());
  ASSERT_TRUE(white.density && pink.density);
  EXPECT_NEAR(white.density->value, pink.density->value, 0.004);
}

TEST(ScanTint, KnownBaseIsItsOwnColour) {
  ColourSource source(one_frame(), pink_base, white_lamp, linear_info());
  MeasureOptions options = shipped_options();
  options.base_tint = pink_base;
  const Tint tint = read_one_scan(source, options, 1, {}).scan.tint;
  EXPECT_EQ(tint.kind, TintKind::none);
  EXPECT_FALSE(tint.may_be_stock);
}

void expect_unknown(const Tint& tint, Unknown why) {
  EXPECT_EQ(tint.kind, Known<TintKind>(why));
  EXPECT_EQ(tint.density, Known<Quantity>(why));
}

TEST(ScanTint, SaysWhyItCannotTell) {
  expect_unknown(tint_of(pink_base, white_lamp, linear_info(1)), Unknown::grey_scan);
  Scan holder = two_frames();
  holder.surround_density = 4.0;
  // Only the pictures and their rims: the rows of holes begin 12.7 mm from the middle line.
  constexpr double half_mm = 12.6;
  holder.window = BoxPx{3.0 * pixels_per_mm, holder.strips[0].origin.y - half_mm * pixels_per_mm,
                        80.0 * pixels_per_mm, 2.0 * half_mm * pixels_per_mm};
  ScanInfo tagged = linear_info();
  tagged.tag_pixels_per_mm = pixels_per_mm;
  expect_unknown(tint_of(pink_base, white_lamp, tagged, holder), Unknown::lamp_colour_hidden);
}

// A camera's display curve flattens just below the top code: channels of unequal light are then
// moved apart, and what looks like a tint is none that can be told.
TEST(ScanTint, BrightCameraPictureTellsNothing) {
  ScanInfo camera = linear_info();
  camera.camera = true;
  camera.bits = 8;
  camera.lossy = true;
  camera.transfer = {TransferKind::linear, {}, TransferSource::assumed};
  const PerChannel<double> bright_lamp{0.9, 0.9, 0.9};
  const Tint tint = tint_of({0.09, 0.10, 0.04}, bright_lamp, camera);
  EXPECT_EQ(tint.kind, Known<TintKind>(Unknown::only_strong_tints));
  EXPECT_GT(*tint.detection_limit, shipped_knowledge().scan.tints.useful_limit_density);
}

}  // namespace
}  // namespace fogline
