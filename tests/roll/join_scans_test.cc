#include <fogline/roll/measure_roll.h>

#include <cmath>

#include <gtest/gtest.h>

namespace fogline {
namespace {

Quantity told(double value, double u95 = 0.04) {
  return {value, u95, {}, {}, {}, false};
}

/// A sketch of 192 densities; different pictures have different phases.
std::vector<float> sketch_of(double phase, double contrast = 0.3) {
  std::vector<float> sketch;
  for (int i = 0; i < 192; ++i) {
    sketch.push_back(static_cast<float>(0.8 + contrast * std::sin(0.37 * i + phase) *
                                                  std::cos(0.11 * i * phase + phase)));
  }
  return sketch;
}

FrameMeasurement frame_of(int number, double shadow, double range, double phase) {
  FrameMeasurement frame;
  frame.number = number;
  frame.tone.shadow = told(shadow);
  frame.tone.middle = told(shadow + 0.4 * range);
  frame.tone.highlight = told(shadow + range);
  frame.tone.range = told(range, 0.06);
  frame.sketch = sketch_of(phase);
  return frame;
}

ScanMeasurement scan_of(std::vector<FrameMeasurement> frames) {
  ScanMeasurement scan;
  scan.fitness = Fitness::comparable;
  scan.densities_above = DensitiesAbove::light_path;
  BaseFog base;
  base.visual = told(0.3, 0.02);
  scan.base_fog = base;
  scan.frames = std::move(frames);
  return scan;
}

TEST(JoinScans, TellsMediansOverAllFrames) {
  const RollMeasurement roll =
      join_scans({scan_of({frame_of(1, 0.40, 0.6, 1.0), frame_of(2, 0.50, 0.8, 2.0)}),
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
  FrameMeasurement cut = frame_of(2, 0.9, 2.0, 2.0);
  cut.cut = true;
  FrameMeasurement blank = frame_of(3, 0.3, 0.02, 3.0);
  blank.inferred = true;
  FrameMeasurement unread = frame_of(4, 0.3, 0.5, 4.0);
  unread.tone = {};
  const RollMeasurement roll =
      join_scans({scan_of({frame_of(1, 0.40, 0.6, 1.0), cut, blank, unread})});
  ASSERT_TRUE(roll.medians.has_value());
  EXPECT_EQ(roll.medians->frames, 1);
  EXPECT_NEAR(roll.medians->range->value, 0.6, 1e-12);
  EXPECT_FALSE(roll.contrast.contrast_index.has_value());
}

TEST(JoinScans, TakesCutFramesWhereNoneIsWhole) {
  FrameMeasurement cut = frame_of(1, 0.9, 2.0, 2.0);
  cut.cut = true;
  const RollMeasurement roll = join_scans({scan_of({cut})});
  ASSERT_TRUE(roll.medians.has_value());
  EXPECT_EQ(roll.medians->frames, 1);
  EXPECT_NEAR(roll.medians->range->value, 2.0, 1e-12);
}

TEST(JoinScans, MarksAFrameScannedTwice) {
  FrameMeasurement again = frame_of(4, 0.52, 0.82, 2.0);
  for (std::size_t i = 0; i < again.sketch.size(); ++i) {
    again.sketch[i] += 0.03F + 0.005F * static_cast<float>(i % 5);  // another scan's zero and noise
  }
  const RollMeasurement roll =
      join_scans({scan_of({frame_of(1, 0.40, 0.6, 1.0), frame_of(2, 0.50, 0.8, 2.0)}),
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
      join_scans({scan_of({frame_of(1, 0.40, 0.6, 1.0), frame_of(2, 0.40, 0.6, 1.0)})});
  EXPECT_FALSE(alike.scans[0].frames[0].repeats_frame.has_value());
  EXPECT_FALSE(alike.scans[0].frames[1].repeats_frame.has_value());
  FrameMeasurement blank = frame_of(1, 0.3, 0.05, 1.0);
  blank.sketch = sketch_of(1.0, 0.01);
  FrameMeasurement other = blank;
  other.number = 2;
  const RollMeasurement roll = join_scans({scan_of({blank}), scan_of({other})});
  EXPECT_FALSE(roll.scans[1].frames[0].repeats_frame.has_value());
}

// Densities above the film's own base are net already, and can't be told above the light path.
TEST(JoinScans, RelativeScansGiveOnlyNetValues) {
  ScanMeasurement relative = scan_of({frame_of(1, 0.14, 0.7, 1.0), frame_of(2, 0.18, 0.9, 2.0)});
  relative.fitness = Fitness::relative;
  relative.densities_above = DensitiesAbove::base;
  relative.base_fog = Unknown::no_zero_for_base;
  const RollMeasurement roll = join_scans({relative});
  ASSERT_TRUE(roll.medians.has_value());
  EXPECT_FALSE(roll.medians->shadow.has_value());
  EXPECT_FALSE(roll.medians->middle.has_value());
  EXPECT_FALSE(roll.medians->highlight.has_value());
  EXPECT_NEAR(roll.medians->net_shadow->value, 0.16, 1e-12);
  EXPECT_NEAR(roll.medians->range->value, 0.8, 1e-12);
  // One relative scan among others spoils no net value.
  const RollMeasurement mixed = join_scans({relative, scan_of({frame_of(3, 0.46, 1.0, 3.0)})});
  EXPECT_FALSE(mixed.medians->shadow.has_value());
  EXPECT_NEAR(mixed.medians->net_shadow->value, 0.16, 1e-12);
  EXPECT_EQ(mixed.medians->frames, 3);
}

TEST(JoinScans, MedianIsABoundWhereMostFramesAre) {
  FrameMeasurement dense = frame_of(1, 0.5, 2.0, 1.0);
  dense.tone.highlight->at_least = dense.tone.range->at_least = true;
  FrameMeasurement denser = dense;
  denser.number = 2;
  denser.sketch = sketch_of(2.0);
  const RollMeasurement roll = join_scans({scan_of({dense, denser, frame_of(3, 0.4, 0.8, 3.0)})});
  EXPECT_TRUE(roll.medians->highlight->at_least);
  EXPECT_TRUE(roll.medians->range->at_least);
  EXPECT_FALSE(roll.medians->shadow->at_least);
  EXPECT_FALSE(roll.contrast.contrast_index.has_value());
}

TEST(JoinScans, OfNothingHasNoMedians) {
  EXPECT_FALSE(join_scans({}).medians.has_value());
  const RollMeasurement roll = join_scans({scan_of({})});
  EXPECT_EQ(roll.scans.size(), 1U);
  EXPECT_FALSE(roll.medians.has_value());
  EXPECT_FALSE(roll.contrast.contrast_index.has_value());
  EXPECT_EQ(roll.contrast.contrast_index.why().kind, Unknown::few_frames_for_contrast);
}

}  // namespace
}  // namespace fogline
