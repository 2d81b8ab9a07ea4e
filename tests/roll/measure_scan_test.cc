#include "base/within_doubt.h"
#include "film/drawn_scan.h"
#include "roll/drawn_source.h"
#include "roll/reading/scan_reading.h"
#include "tables/shipped_knowledge.h"

#include <fogline/roll/measure_roll.h>

#include <algorithm>
#include <array>
#include <cmath>
#include <string>

#include <gtest/gtest.h>

namespace fogline {
namespace {

using drawn::DrawnSource;
using drawn::Scan;
using drawn::Strip;

constexpr double base_density = 0.28;

/// Two frames on 80 mm of film; bare light around it.
Scan two_frames() {
  Strip strip;
  strip.end_mm = 80.0;
  strip.base_density = base_density;
  strip.frames = {strip.frame(2.0), strip.frame(40.5)};
  return drawn::scan_of(strip);
}

/// Drawn once for all tests that take it as it is.
const Raster<float>& two_frames_light() {
  static const Raster<float> light = drawn::light_of(two_frames());
  return light;
}

/// Factory-exposed bars of 0.8 mm in the lower outer rebate, 1.1 above base.
void print_edge(Strip& strip, double begin_mm, double end_mm) {
  for (double at = begin_mm; at + 0.8 < end_mm; at += 3.0) {
    strip.patches.push_back({{at, at + 0.8, 15.7, 17.2}, 1.1});
  }
}

/// A colour scan of 16 bits in linear light, told by its profile.
ScanInfo plain_info() {
  ScanInfo info;
  info.file = "drawn";
  info.bits = 16;
  info.samples_per_pixel = 3;
  info.channels = 3;
  info.transfer = {TransferKind::linear, {}, TransferSource::icc_profile};
  return info;
}

/// How far the pictures may be doubted: an unknown device reads silver up to 30 % too dense.
constexpr double middle_u95 = 0.25;
constexpr double highlight_u95 = 0.4;

ScanMeasurement measured(const Raster<float>& light, const ScanInfo& info,
                         bool display_codes = false, int first_frame = 1) {
  DrawnSource source(light, info, display_codes);
  return read_one_scan(source, shipped_options(), first_frame, {}).scan;
}

bool has(const ScanMeasurement& scan, CautionKind kind) {
  return std::any_of(scan.cautions.begin(), scan.cautions.end(),
                     [&](const Caution& caution) { return caution.fact.kind == kind; });
}

void expect_unfit(const ScanMeasurement& scan, CautionKind kind) {
  EXPECT_EQ(scan.fitness, Fitness::unfit);
  ASSERT_TRUE(has(scan, kind));
  for (const Caution& caution : scan.cautions) {
    if (caution.fact.kind == kind) {
      EXPECT_EQ(caution.severity, Severity::unfit);
    }
  }
  EXPECT_EQ(scan.base_fog, Known<BaseFog>(Unknown::no_densities));
  for (const FrameMeasurement& frame : scan.frames) {
    EXPECT_EQ(frame.tone.range, Known<Quantity>(Unknown::no_densities));
  }
}

void expect_base(const ScanMeasurement& scan) {
  ASSERT_TRUE(scan.base_fog.has_value());
  test::expect_within_doubt(scan.base_fog->visual, base_density, 0.1);
}

/// Percentiles of the drawn picture, without grain, over spots of 0.1 mm.
double drawn_percentile(const Strip& strip, std::size_t frame, double share) {
  std::vector<double> values;
  const FilmExtent& area = strip.frames[frame];
  for (double s = area.along_begin_mm + 0.75; s < area.along_end_mm - 0.7; s += 0.1) {
    for (double t = area.across_begin_mm + 0.75; t < area.across_end_mm - 0.7; t += 0.1) {
      values.push_back(*drawn::strip_density(strip, {s, t}));
    }
  }
  std::sort(values.begin(), values.end());
  return values[static_cast<std::size_t>(share * static_cast<double>(values.size() - 1))];
}

TEST(MeasureScan, ReadsBaseAndToneOfAComparableScan) {
  const Scan scan = two_frames();
  const ScanMeasurement found = measured(drawn::light_of(scan), plain_info(), false, 7);
  EXPECT_EQ(found.fitness, Fitness::comparable);
  EXPECT_EQ(found.zero.source, ZeroSource::perforations);
  EXPECT_EQ(found.densities_above, DensitiesAbove::light_path);
  expect_base(found);
  ASSERT_TRUE(found.base_fog->channels.has_value());
  for (const Quantity& channel : *found.base_fog->channels) {
    test::expect_within_doubt(channel, base_density, 0.1);
  }
  ASSERT_EQ(found.frames.size(), 2U);
  for (std::size_t i = 0; i < 2; ++i) {
    const FrameMeasurement& frame = found.frames[i];
    EXPECT_EQ(frame.number, 7 + static_cast<int>(i));
    ASSERT_TRUE(frame.tone.shadow && frame.tone.middle && frame.tone.highlight);
    const Strip& strip = scan.strips[0];
    test::expect_within_doubt(*frame.tone.shadow, drawn_percentile(strip, i, 0.02), 0.1);
    test::expect_within_doubt(*frame.tone.middle, drawn_percentile(strip, i, 0.50), middle_u95);
    test::expect_within_doubt(*frame.tone.highlight, drawn_percentile(strip, i, 0.98),
                              highlight_u95);
  }
  ASSERT_EQ(found.strips.size(), 1U);
  EXPECT_EQ(found.strips[0].perforations, 2 * scan.strips[0].holes_a_row());
  EXPECT_EQ(found.strips[0].format, FilmFormat::f135);
  EXPECT_TRUE(has(found, CautionKind::glare_unknown));
  EXPECT_FALSE(has(found, CautionKind::eight_bit));
  EXPECT_FALSE(has(found, CautionKind::grey_scan));
}

TEST(MeasureScan, HandsOnASketchOfEachFrameAndAPicture) {
  DrawnSource source(two_frames_light(), plain_info(), false);
  const ScanReading reading = read_one_scan(source, shipped_options(), 1, {});
  ASSERT_EQ(reading.sketches.size(), reading.scan.frames.size());
  for (const FrameSketch& sketch : reading.sketches) {
    EXPECT_EQ(sketch.size(), 192U);
  }
  EXPECT_FALSE(reading.picture.pixels.empty());
  // Nothing of a target without one.
  EXPECT_TRUE(reading.exposures.frames.empty());
}

TEST(MeasureScan, OutlinesLieOnTheirFrames) {
  const Scan scan = two_frames();
  const ScanMeasurement found = measured(drawn::light_of(scan), plain_info());
  for (const Outline& outline : found.outlines) {
    if (outline.kind == OutlineKind::clear_film) {
      for (const PointPx& point : outline.points) {
        const PointMm film = drawn::film_at(scan, scan.strips[0], point.x, point.y);
        const auto density = drawn::strip_density(scan.strips[0], film);
        ASSERT_TRUE(density.has_value());
        EXPECT_NEAR(*density, base_density, 1e-9) << film.along_mm << " " << film.across_mm;
      }
    }
  }
  ASSERT_EQ(found.frames.size(), 2U);
  const BoxPx& box = found.frames[0].box_px;
  const PointPx begin = drawn::scan_at(scan, scan.strips[0], {2.0, -12.0});
  EXPECT_NEAR(box.x, begin.x, 2.0);
  EXPECT_NEAR(box.y, begin.y, 2.0);
  EXPECT_NEAR(box.width, 36.0 * scan.pixels_per_mm, 3.0);
  EXPECT_NEAR(box.height, 24.0 * scan.pixels_per_mm, 3.0);
  EXPECT_NEAR(found.frames[0].corners_px[0].x, box.x, 0.5);
  EXPECT_NEAR(found.frames[0].corners_px[2].y, box.y + box.height, 0.5);
}

/// From top left, as the image is stored.
void expect_clockwise(const FrameMeasurement& frame) {
  const BoxPx& box = frame.box_px;
  const std::array<PointPx, 4> corners{PointPx{box.x, box.y},
                                       {box.x + box.width, box.y},
                                       {box.x + box.width, box.y + box.height},
                                       {box.x, box.y + box.height}};
  for (std::size_t i = 0; i < corners.size(); ++i) {
    EXPECT_NEAR(frame.corners_px[i].x, corners[i].x, 1.0) << i;
    EXPECT_NEAR(frame.corners_px[i].y, corners[i].y, 1.0) << i;
  }
}

TEST(MeasureScan, CornersRunClockwiseFromTopLeft) {
  Scan scan = two_frames();
  const ScanMeasurement lying = measured(drawn::light_of(scan), plain_info());
  std::swap(scan.width_px, scan.height_px);
  scan.strips[0].direction_deg = 90.0;
  scan.strips[0].origin = {0.5 * scan.width_px, 3.0 * scan.pixels_per_mm};
  const ScanMeasurement standing = measured(drawn::light_of(scan), plain_info());
  ASSERT_EQ(lying.frames.size(), 2U);
  ASSERT_EQ(standing.frames.size(), 2U);
  for (std::size_t i = 0; i < 2; ++i) {
    expect_clockwise(lying.frames[i]);
    expect_clockwise(standing.frames[i]);
    EXPECT_GT(lying.frames[i].box_px.width, lying.frames[i].box_px.height);
    EXPECT_LT(standing.frames[i].box_px.width, standing.frames[i].box_px.height);
  }
  EXPECT_LT(standing.frames[0].box_px.y, standing.frames[1].box_px.y);
  expect_base(standing);
}

// Film without any picture still has a base.
TEST(MeasureScan, UnexposedFilmTellsItsBase) {
  Scan scan = two_frames();
  scan.strips[0].frames.clear();
  const ScanMeasurement found = measured(drawn::light_of(scan), plain_info());
  EXPECT_EQ(found.fitness, Fitness::comparable);
  EXPECT_TRUE(found.frames.empty());
  expect_base(found);
  DrawnSource source(drawn::light_of(scan), plain_info(), false);
  EXPECT_FALSE(measure_roll(source, shipped_options()).measurement.medians.has_value());
}

TEST(MeasureScan, EightBitsWithoutAProfileAreIndicative) {
  ScanInfo info = plain_info();
  info.bits = 8;
  info.samples_per_pixel = info.channels = 1;
  info.transfer = {TransferKind::srgb, {}, TransferSource::assumed};
  const ScanMeasurement found = measured(two_frames_light(), info, true);
  EXPECT_EQ(found.fitness, Fitness::indicative);
  EXPECT_TRUE(has(found, CautionKind::eight_bit));
  EXPECT_TRUE(has(found, CautionKind::grey_scan));
  expect_base(found);
  EXPECT_FALSE(found.base_fog->channels.has_value());
  // Less is known than of 16 bits with a profile.
  const ScanMeasurement better = measured(two_frames_light(), plain_info());
  EXPECT_GT(found.base_fog->visual.u95, better.base_fog->visual.u95);
}

TEST(MeasureScan, CompressedFilesAreIndicative) {
  ScanInfo info = plain_info();
  info.lossy = true;
  EXPECT_EQ(measured(two_frames_light(), info).fitness, Fitness::indicative);
}

// A holder hides perforations and bare light: densities above base only.
TEST(MeasureScan, BehindAHolderIsRelative) {
  Scan scan = two_frames();
  scan.surround_density = 4.0;
  const double half_px = 12.6 * scan.pixels_per_mm;
  scan.window = BoxPx{3.0 * scan.pixels_per_mm, scan.strips[0].origin.y - half_px,
                      80.0 * scan.pixels_per_mm, 2.0 * half_px};
  ScanInfo info = plain_info();
  info.tag_pixels_per_mm = scan.pixels_per_mm;
  const ScanMeasurement found = measured(drawn::light_of(scan), info);
  EXPECT_EQ(found.fitness, Fitness::relative);
  EXPECT_EQ(found.densities_above, DensitiesAbove::base);
  EXPECT_EQ(found.zero.source, ZeroSource::none);
  EXPECT_TRUE(has(found, CautionKind::bare_light_hidden));
  EXPECT_EQ(found.base_fog, Known<BaseFog>(Unknown::no_zero_for_base));
  ASSERT_EQ(found.frames.size(), 2U);
  for (std::size_t i = 0; i < 2; ++i) {
    const FrameTone& tone = found.frames[i].tone;
    ASSERT_TRUE(tone.shadow && tone.highlight);
    const Strip& strip = scan.strips[0];
    test::expect_within_doubt(*tone.shadow, drawn_percentile(strip, i, 0.02) - base_density, 0.1);
    test::expect_within_doubt(*tone.highlight, drawn_percentile(strip, i, 0.98) - base_density,
                              highlight_u95);
  }
}

// Bare light beyond the top code, film below it.
TEST(MeasureScan, ClippedBareLightIsRelative) {
  Scan scan = two_frames();
  scan.bare_light = 1.3;
  const ScanMeasurement found = measured(drawn::light_of(scan), plain_info());
  EXPECT_EQ(found.fitness, Fitness::relative);
  EXPECT_TRUE(has(found, CautionKind::bare_light_clipped));
  EXPECT_FALSE(found.base_fog.has_value());
}

TEST(MeasureScan, ClippedBaseIsUnfit) {
  Scan scan = two_frames();
  scan.bare_light = 2.4;
  expect_unfit(measured(drawn::light_of(scan), plain_info()), CautionKind::base_clipped);
}

TEST(MeasureScan, InvertedScanIsUnfit) {
  Raster<float> light = two_frames_light();
  for (float& value : light.samples()) {
    const float root = 1.0F - std::sqrt(std::clamp(value, 0.0F, 1.0F));
    value = root * root;
  }
  expect_unfit(measured(light, plain_info()), CautionKind::inverted);
}

TEST(MeasureScan, EmptyPictureIsUnfit) {
  expect_unfit(measured(Raster<float>(400, 300, 1, 0.7F), plain_info()), CautionKind::no_film);
  expect_unfit(measured(Raster<float>(1, 1, 1, 0.0F), plain_info()), CautionKind::no_film);
}

// A 16-bit file that doesn't tell its curve is read by its picture, twice where need be.
TEST(MeasureScan, AsksThePictureForTheCurve) {
  ScanInfo info = plain_info();
  info.transfer = {};
  info.transfer_known = false;
  Scan scan = two_frames();
  print_edge(scan.strips[0], 5.0, 75.0);
  for (const bool display_codes : {false, true}) {
    DrawnSource source(drawn::light_of(scan), info, display_codes);
    const ScanMeasurement found = read_one_scan(source, shipped_options(), 1, {}).scan;
    EXPECT_EQ(found.info.transfer.kind, display_codes ? TransferKind::srgb : TransferKind::linear);
    EXPECT_EQ(found.info.transfer.source, TransferSource::assumed);
    EXPECT_EQ(source.passes, 1);
    EXPECT_EQ(found.fitness, Fitness::indicative);
    expect_base(found);
  }
}

// Pictures and a base that fit both readings: no density is claimed.
TEST(MeasureScan, WithoutACurveTellsMarksOnly) {
  ScanInfo info = plain_info();
  info.transfer = {};
  info.transfer_known = false;
  Scan scan = two_frames();
  scan.strips[0].base_density = 0.40;
  const ScanMeasurement found = measured(drawn::light_of(scan), info, true);
  EXPECT_EQ(found.fitness, Fitness::marks_only);
  EXPECT_TRUE(has(found, CautionKind::transfer_unknown));
  EXPECT_FALSE(found.base_fog.has_value());
  EXPECT_EQ(found.frames.size(), 2U);
  EXPECT_FALSE(found.density_limit.has_value());
}

TEST(MeasureScan, TellsAWrongResolutionTag) {
  ScanInfo info = plain_info();
  info.tag_pixels_per_mm = 20.0;
  const ScanMeasurement found = measured(two_frames_light(), info);
  EXPECT_TRUE(has(found, CautionKind::resolution_tag_wrong));
  ASSERT_TRUE(found.pixels_per_mm.has_value());
  EXPECT_NEAR(*found.pixels_per_mm, 8.0, 0.04);
}

// The lamp falls off by a tenth over the film: its course along the perforations is taken out.
TEST(MeasureScan, FollowsAnUnevenLamp) {
  const Scan scan = two_frames();
  Raster<float> light = drawn::light_of(scan);
  for (int y = 0; y < light.height(); ++y) {
    for (int x = 0; x < light.width(); ++x) {
      const double along = static_cast<double>(x) / light.width();
      light.at(x, y) *= static_cast<float>(std::pow(10.0, -0.1 * along));
    }
  }
  const ScanMeasurement found = measured(light, plain_info());
  EXPECT_TRUE(has(found, CautionKind::uneven_light));
  ASSERT_TRUE(found.zero.unevenness_density.has_value());
  EXPECT_NEAR(*found.zero.unevenness_density, 0.09, 0.01);
  expect_base(found);
  ASSERT_EQ(found.frames.size(), 2U);
  const Quantity& middle = *found.frames[1].tone.middle;
  test::expect_within_doubt(middle, drawn_percentile(scan.strips[0], 1, 0.50), middle_u95);
}

Strip with_leader(double net_density) {
  Strip strip;
  strip.end_mm = 116.0;
  strip.base_density = base_density;
  strip.frames = {strip.frame(38.0), strip.frame(76.5)};
  strip.patches = {{{0.0, 30.0, -18.0, 18.0}, net_density}};
  return strip;
}

TEST(MeasureScan, ReadsEdgePrintAndLeader) {
  Strip strip = with_leader(1.5);
  print_edge(strip, 40.0, 112.0);
  const ScanMeasurement found = measured(drawn::light_of(drawn::scan_of(strip)), plain_info());
  EXPECT_EQ(found.fitness, Fitness::comparable);
  ASSERT_TRUE(found.leader.has_value());
  EXPECT_FALSE(found.leader->at_least);
  test::expect_within_doubt(*found.leader, base_density + 1.5, 0.6);
  ASSERT_TRUE(found.edge_print.has_value());
  test::expect_within_doubt(*found.edge_print, base_density + 1.1, 0.45);
  expect_base(found);
}

// A leader darker than the stray light that is taken away is told as a bound, never as no number.
TEST(MeasureScan, ALeaderBeyondReachIsABound) {
  const Strip strip = with_leader(2.3);
  const ScanMeasurement found = measured(drawn::light_of(drawn::scan_of(strip)), plain_info());
  ASSERT_TRUE(found.leader.has_value());
  EXPECT_TRUE(std::isfinite(found.leader->value));
  EXPECT_TRUE(found.leader->at_least);
  EXPECT_LT(found.leader->value, base_density + 2.3);
}

TEST(MeasureScan, TellsProgress) {
  DrawnSource source(Raster<float>(60, 40, 1, 0.5F), plain_info(), false);
  double told = 0.0;
  read_one_scan(source, shipped_options(), 1, [&](double share) { told = share; });
  EXPECT_EQ(told, 1.0);
}

}  // namespace
}  // namespace fogline
