#include "numerics/robust.h"
#include "roll/target/read_target.h"
#include "sensitometry/estimate_contrast.h"

#include <fogline/roll/measure_roll.h>

#include <algorithm>
#include <cmath>

namespace fogline {

namespace {

/// Two sketches of one picture agree to this correlation; different pictures of one subject don't.
constexpr double same_picture_correlation = 0.985;
/// A sketch must vary by this (standard deviation of density) to be recognised at all.
constexpr double least_variation = 0.05;

double correlation(const std::vector<float>& a, const std::vector<float>& b) {
  if (a.empty() || a.size() != b.size()) {
    return 0.0;
  }
  const auto n = static_cast<double>(a.size());
  double sum_a = 0.0;
  double sum_b = 0.0;
  for (std::size_t i = 0; i < a.size(); ++i) {
    sum_a += static_cast<double>(a[i]);
    sum_b += static_cast<double>(b[i]);
  }
  double aa = 0.0;
  double bb = 0.0;
  double ab = 0.0;
  for (std::size_t i = 0; i < a.size(); ++i) {
    const double da = static_cast<double>(a[i]) - sum_a / n;
    const double db = static_cast<double>(b[i]) - sum_b / n;
    aa += da * da;
    bb += db * db;
    ab += da * db;
  }
  const bool varied = std::sqrt(aa / n) > least_variation && std::sqrt(bb / n) > least_variation;
  return varied ? ab / std::sqrt(aa * bb) : 0.0;
}

/// Frames scanned twice, in different scans, count once. Frames of one scan are different pieces of
/// film, however alike.
void mark_repeats(std::vector<ScanMeasurement>& scans) {
  for (std::size_t later = 1; later < scans.size(); ++later) {
    for (FrameMeasurement& frame : scans[later].frames) {
      for (std::size_t earlier = 0; earlier < later && !frame.repeats_frame; ++earlier) {
        for (const FrameMeasurement& other : scans[earlier].frames) {
          if (correlation(frame.sketch, other.sketch) > same_picture_correlation) {
            frame.repeats_frame = other.number;
            break;
          }
        }
      }
    }
  }
}

struct CountedFrame {
  const FrameMeasurement* frame = nullptr;
  const ScanMeasurement* scan = nullptr;
};

std::vector<CountedFrame> counted_frames(const std::vector<ScanMeasurement>& scans) {
  std::vector<CountedFrame> whole;
  std::vector<CountedFrame> cut;
  for (const ScanMeasurement& scan : scans) {
    for (const FrameMeasurement& frame : scan.frames) {
      if (frame.inferred || frame.repeats_frame || frame.target || !frame.tone.range) {
        continue;
      }
      (frame.cut ? cut : whole).push_back({&frame, &scan});
    }
  }
  return whole.empty() ? cut : whole;
}

Known<Quantity> median_of(const std::vector<CountedFrame>& frames,
                          Known<Quantity> FrameTone::*member, bool net) {
  std::vector<double> values;
  std::vector<double> doubts;
  std::size_t bounds = 0;
  for (const CountedFrame& counted : frames) {
    const Known<Quantity>& quantity = counted.frame->tone.*member;
    const bool above_base = counted.scan->densities_above == DensitiesAbove::base;
    if (!quantity || (net && !above_base && !counted.scan->base_fog)) {
      continue;
    }
    const double base = net && !above_base ? counted.scan->base_fog->visual.value : 0.0;
    values.push_back(quantity->value - base);
    doubts.push_back(quantity->u95);
    bounds += quantity->at_least ? 1 : 0;
  }
  if (values.empty()) {
    return Unknown::scan_silent;
  }
  // Frames of one scan share zero, tone curve and angle of light: the doubt doesn't average out.
  return Quantity{median(values), median(doubts), {}, {}, {}, 2 * bounds > values.size()};
}

bool all_above_light(const std::vector<CountedFrame>& frames) {
  return std::all_of(frames.begin(), frames.end(), [](const CountedFrame& counted) {
    return counted.scan->densities_above == DensitiesAbove::light_path;
  });
}

}  // namespace

RollMeasurement join_scans(std::vector<ScanMeasurement> scans, const ExposureTarget* target) {
  RollMeasurement roll;
  mark_repeats(scans);
  roll.scans = std::move(scans);
  if (target != nullptr && !target->empty()) {
    read_target(roll, *target);
  }
  const std::vector<CountedFrame> frames = counted_frames(roll.scans);
  std::vector<Quantity> ranges;
  for (const CountedFrame& counted : frames) {
    ranges.push_back(*counted.frame->tone.range);
  }
  if (!roll.sensitometry) {
    roll.contrast = estimate_contrast(ranges);
    if (roll.sensitometry.why().kind != Unknown::no_target && !roll.contrast.contrast_index) {
      roll.contrast.contrast_index = roll.sensitometry.why();
    }
  }
  if (frames.empty()) {
    return roll;
  }
  RollMedians medians;
  medians.frames = static_cast<int>(frames.size());
  if (all_above_light(frames)) {
    medians.shadow = median_of(frames, &FrameTone::shadow, false);
    medians.middle = median_of(frames, &FrameTone::middle, false);
    medians.highlight = median_of(frames, &FrameTone::highlight, false);
  }
  medians.range = median_of(frames, &FrameTone::range, false);
  medians.net_shadow = median_of(frames, &FrameTone::shadow, true);
  medians.net_middle = median_of(frames, &FrameTone::middle, true);
  medians.net_highlight = median_of(frames, &FrameTone::highlight, true);
  roll.medians = medians;
  return roll;
}

}  // namespace fogline
