#include "roll/join_scans.h"

#include <cmath>

#include <gtest/gtest.h>

namespace fogline {
namespace {

Quantity told(double value, double u95 = 0.04) {
  return {value, u95, {}, {}, {}, false};
}

/// A sketch of 192 densities; different pictures have different phases.
FrameSketch sketch_of(double phase, double contrast = 0.3) {
  FrameSketch sketch;
  for (int i = 0; i < 192; ++i) {
    sketch.push_back(static_cast<float>(0.8 + contrast * std::sin(0.37 * i + phase) *
                                                  std::cos(0.11 * i * phase + phase)));
  }
  return sketch;
}

/// A frame and the sketch of its picture.
struct DrawnFrame : FrameMeasurement {
  FrameSketch sketch;
};

DrawnFrame frame_of(int number, double shadow, double range, double phase) {
  DrawnFrame frame;
  frame.number = number;
  frame.strip = 1;
  frame.tone.shadow = told(shadow);
  frame.tone.middle = told(shadow + 0.4 * range);
  frame.tone.highlight = told(shadow + range);
  frame.tone.range = told(range, 0.06);
  frame.sketch = sketch_of(phase);
  return frame;
}

ScanReading scan_of(const std::vector<DrawnFrame>& frames) {
  ScanReading reading;
  ScanMeasurement& scan = reading.scan;
  scan.fitness = Fitness::comparable;
  scan.densities_above = DensitiesAbove::light_path;
  BaseFog base;
  base.visual = told(0.3, 0.02);
  scan.base_fog = base;
  for (const DrawnFrame& frame : frames) {
    scan.frames.push_back(frame);
    reading.sketches.push_back(frame.sketch);
  }
  return reading;
}

RollMeasurement joined(std::vector<ScanReading> scans) {
  return join_scans(std::move(scans), std::nullopt).measurement;
}

TEST(JoinScans, TellsMediansOverAllFrames) {
  const RollMeasurement roll =
      joined({scan_of({frame_of(1, 0.40, 0.6, 1.0), frame_of(2, 0.50, 0.8, 2.0)}),
              scan_of({frame_of(3, 0.46, 1.1, 3.0)})});
  ASSERT_TRUE(roll.medians.has_value());
  EXPECT_EQ(roll.medians->frames, 3);
  EXPECT_NEAR(roll.medians->shadow->value, 0.46, 1e-12);
  EXPECT_NEAR(roll.medians->range->value, 0.8, 1e-12);
  EXPECT_NEAR(roll.medians->highlight->value, 1.30, 1e-12);
  EXPECT_NEAR(roll.medians->net_shadow->value, 0.16, 1e-12);
  EXPECT_NEAR(roll.medians->net_highlight->value, 1.00, 1e-12);
  // Frames of a roll share their doubts: the median's doubt is a frame's, not a third of it.
  EXPECT_NEAR(roll.medians->range->u95, 0.06, 1e-12);
  EXPECT_EQ(roll.contrast.method, ContrastMethod::scene_estimate);
}

TEST(JoinScans, LeavesCutAndBlankFramesOutWhereWholeOnesAre) {
  DrawnFrame cut = frame_of(2, 0.9, 2.0, 2.0);
  cut.cut = true;
  DrawnFrame blank = frame_of(3, 0.3, 0.02, 3.0);
  blank.inferred = true;
  DrawnFrame unread = frame_of(4, 0.3, 0.5, 4.0);
  unread.tone = {};
  const RollMeasurement roll = joined({scan_of({frame_of(1, 0.40, 0.6, 1.0), cut, blank, unread})});
  ASSERT_TRUE(roll.medians.has_value());
  EXPECT_EQ(roll.medians->frames, 1);
  EXPECT_NEAR(roll.medians->range->value, 0.6, 1e-12);
  EXPECT_FALSE(roll.contrast.contrast_index.has_value());
}

TEST(JoinScans, TakesCutFramesWhereNoneIsWhole) {
  DrawnFrame cut = frame_of(1, 0.9, 2.0, 2.0);
  cut.cut = true;
  const RollMeasurement roll = joined({scan_of({cut})});
  ASSERT_TRUE(roll.medians.has_value());
  EXPECT_EQ(roll.medians->frames, 1);
  EXPECT_NEAR(roll.medians->range->value, 2.0, 1e-12);
}

TEST(JoinScans, MarksAFrameScannedTwice) {
  DrawnFrame again = frame_of(4, 0.52, 0.82, 2.0);
  for (std::size_t i = 0; i < again.sketch.size(); ++i) {
    again.sketch[i] += 0.03F + 0.005F * static_cast<float>(i % 5);  // another scan's zero and noise
  }
  const RollMeasurement roll =
      joined({scan_of({frame_of(1, 0.40, 0.6, 1.0), frame_of(2, 0.50, 0.8, 2.0)}),
              scan_of({frame_of(3, 0.46, 1.1, 3.0), again})});
  EXPECT_FALSE(roll.scans[0].frames[1].repeats_frame.has_value());
  EXPECT_FALSE(roll.scans[1].frames[0].repeats_frame.has_value());
  ASSERT_TRUE(roll.scans[1].frames[1].repeats_frame.has_value());
  EXPECT_EQ(*roll.scans[1].frames[1].repeats_frame, 2);
  EXPECT_EQ(roll.medians->frames, 3);
}

// Frames of one scan are different pieces of film, however alike; blank film is like all blank
// film.
TEST(JoinScans, MarksNoRepeatsWithinOneScanNorOfBlankFilm) {
  const RollMeasurement alike =
      joined({scan_of({frame_of(1, 0.40, 0.6, 1.0), frame_of(2, 0.40, 0.6, 1.0)})});
  EXPECT_FALSE(alike.scans[0].frames[0].repeats_frame.has_value());
  EXPECT_FALSE(alike.scans[0].frames[1].repeats_frame.has_value());
  DrawnFrame blank = frame_of(1, 0.3, 0.05, 1.0);
  blank.sketch = sketch_of(1.0, 0.01);
  DrawnFrame other = blank;
  other.number = 2;
  const RollMeasurement roll = joined({scan_of({blank}), scan_of({other})});
  EXPECT_FALSE(roll.scans[1].frames[0].repeats_frame.has_value());
}

// Densities above the film's own base are net already, and can't be told above the light path.
TEST(JoinScans, RelativeScansGiveOnlyNetValues) {
  ScanReading relative = scan_of({frame_of(1, 0.14, 0.7, 1.0), frame_of(2, 0.18, 0.9, 2.0)});
  relative.scan.fitness = Fitness::relative;
  relative.scan.densities_above = DensitiesAbove::base;
  relative.scan.base_fog = Unknown::no_zero_for_base;
  const RollMeasurement roll = joined({relative});
  ASSERT_TRUE(roll.medians.has_value());
  EXPECT_FALSE(roll.medians->shadow.has_value());
  EXPECT_FALSE(roll.medians->middle.has_value());
  EXPECT_FALSE(roll.medians->highlight.has_value());
  EXPECT_NEAR(roll.medians->net_shadow->value, 0.16, 1e-12);
  EXPECT_NEAR(roll.medians->range->value, 0.8, 1e-12);
  // One relative scan among others spoils no net value.
  const RollMeasurement mixed = joined({relative, scan_of({frame_of(3, 0.46, 1.0, 3.0)})});
  EXPECT_FALSE(mixed.medians->shadow.has_value());
  EXPECT_NEAR(mixed.medians->net_shadow->value, 0.16, 1e-12);
  EXPECT_EQ(mixed.medians->frames, 3);
}

TEST(JoinScans, MedianIsABoundWhereMostFramesAre) {
  DrawnFrame dense = frame_of(1, 0.5, 2.0, 1.0);
  dense.tone.highlight->at_least = dense.tone.range->at_least = true;
  DrawnFrame denser = dense;
  denser.number = 2;
  denser.sketch = sketch_of(2.0);
  const RollMeasurement roll = joined({scan_of({dense, denser, frame_of(3, 0.4, 0.8, 3.0)})});
  EXPECT_TRUE(roll.medians->highlight->at_least);
  EXPECT_TRUE(roll.medians->range->at_least);
  EXPECT_FALSE(roll.medians->shadow->at_least);
  EXPECT_FALSE(roll.contrast.contrast_index.has_value());
}

// What a scan needs only while it is joined stays behind; its picture goes beside the measurement.
TEST(JoinScans, HandsPicturesBesideTheMeasurement) {
  ScanReading first = scan_of({frame_of(1, 0.40, 0.6, 1.0)});
  first.picture.scan_px_per_pixel = 4.0;
  const MeasuredRoll roll = join_scans({first, scan_of({})}, std::nullopt);
  ASSERT_EQ(roll.pictures.size(), 2U);
  EXPECT_EQ(roll.pictures[0].scan_px_per_pixel, 4.0);
}

// Even areas at one exposure above another: the exposures are laid on them and the frames told from
// pictures.
TEST(JoinScans, LaysABracketOnItsFrames) {
  ExposureTarget target;
  target.bracket = BracketTarget{{-4, -3, -2, -1, 0, 1, 2, 3}, std::vector<double>(8, 0.05), 1};
  std::vector<DrawnFrame> frames;
  ScanExposures exposures;
  exposures.strips.resize(1);
  exposures.strips[0].net_doubts = NetDoubts{0.3, 0.01, 0.01, {}, 3.0};
  for (int i = 0; i < 8; ++i) {
    frames.push_back(frame_of(i + 1, 0.4, 0.1, 1.0 + i));
    ExposedReading even;
    even.strip = 1;
    even.area.density = 0.3 + 0.05 + 0.18 * i;
    even.area.doubt = 0.005;
    even.density = told(even.area.density);
    exposures.frames.push_back(even);
  }
  ScanReading scan = scan_of(frames);
  scan.scan.strips.resize(1);
  scan.exposures = exposures;
  const RollMeasurement roll = join_scans({scan}, target).measurement;
  ASSERT_TRUE(roll.sensitometry) << fact_row(roll.sensitometry.why().kind).code;
  EXPECT_EQ(roll.contrast.method, ContrastMethod::bracket);
  // 0.18 a stop: 0.6 of log H.
  ASSERT_TRUE(roll.contrast.contrast_index);
  EXPECT_NEAR(roll.contrast.contrast_index->value, 0.6, 0.06);
  ASSERT_EQ(roll.scans[0].steps.size(), 8U);
  for (std::size_t i = 0; i < 8; ++i) {
    EXPECT_EQ(roll.scans[0].steps[i].number, static_cast<int>(i) + 1);
    EXPECT_NEAR(*roll.scans[0].steps[i].log_h, (static_cast<double>(i) - 4.0) * stop_log_h, 1e-9);
    EXPECT_TRUE(roll.scans[0].frames[i].target);
  }
  EXPECT_EQ(roll.scans[0].outlines.size(), 8U);
  EXPECT_FALSE(roll.medians.has_value());
}

TEST(JoinScans, OfNothingHasNoMedians) {
  EXPECT_FALSE(joined({}).medians.has_value());
  const RollMeasurement roll = joined({scan_of({})});
  EXPECT_EQ(roll.scans.size(), 1U);
  EXPECT_FALSE(roll.medians.has_value());
  EXPECT_FALSE(roll.contrast.contrast_index.has_value());
  EXPECT_EQ(roll.contrast.contrast_index.why().kind, Unknown::few_frames_for_contrast);
}

}  // namespace
}  // namespace fogline
