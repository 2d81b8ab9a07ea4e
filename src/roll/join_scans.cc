#include "roll/join_scans.h"

#include "numerics/robust.h"
#include "roll/target/read_target.h"
#include "sensitometry/estimate_contrast.h"

#include <algorithm>
#include <cmath>
#include <utility>

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

/// The number of the frame, in scans before this one, of which a sketch is the same picture.
std::optional<int> frame_before(const std::vector<ScanReading>& scans, std::size_t before,
                                const FrameSketch& sketch) {
  for (std::size_t s = 0; s < before; ++s) {
    for (std::size_t f = 0; f < scans[s].sketches.size(); ++f) {
      if (correlation(sketch, scans[s].sketches[f]) > same_picture_correlation) {
        return scans[s].scan.frames[f].number;
      }
    }
  }
  return std::nullopt;
}

/// Frames scanned twice, in different scans, count once. Frames of one scan are different pieces of
/// film, however alike.
std::vector<ScanReading> with_repeats(std::vector<ScanReading> scans) {
  for (std::size_t s = 1; s < scans.size(); ++s) {
    for (std::size_t f = 0; f < scans[s].sketches.size(); ++f) {
      scans[s].scan.frames[f].repeats_frame = frame_before(scans, s, scans[s].sketches[f]);
    }
  }
  return scans;
}

/// A scan's steps, least exposed first within each role; a target's are numbered so, a scanner's
/// wedge has its own numbers.
std::vector<StepMeasurement> numbered(std::vector<StepMeasurement> steps) {
  std::stable_sort(
      steps.begin(), steps.end(), [](const StepMeasurement& a, const StepMeasurement& b) {
        return a.role != b.role ? a.role < b.role : a.log_h.value_or(0.0) < b.log_h.value_or(0.0);
      });
  int number = 0;
  const StepRole* role = nullptr;
  for (StepMeasurement& step : steps) {
    if (step.role == StepRole::scanner_wedge) {
      continue;
    }
    number = role != nullptr && *role == step.role ? number + 1 : 1;
    role = &step.role;
    step.number = number;
  }
  return steps;
}

/// The scans with the target's steps, and its frames told from pictures.
std::vector<ScanMeasurement> with_target(std::vector<ScanMeasurement> scans,
                                         const TargetReading& target) {
  for (const FrameIndex& index : target.frames) {
    scans[index.scan].frames[index.frame].target = true;
  }
  for (const TargetSteps::Place& place : target.steps) {
    ScanMeasurement& scan = scans[place.scan];
    const std::array<PointPx, 4>& corners = place.step.corners_px;
    scan.steps.push_back(place.step);
    scan.outlines.push_back(
        {OutlineKind::exposed_step, {corners.begin(), corners.end()}, place.strip});
  }
  for (ScanMeasurement& scan : scans) {
    scan.steps = numbered(std::move(scan.steps));
  }
  return scans;
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

Known<RollMedians> medians_of(const std::vector<CountedFrame>& frames) {
  if (frames.empty()) {
    return Unknown::no_frame_read;
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
  return medians;
}

/// Contrast guessed from the pictures, and why there is none from a target that was there.
ContrastEstimate contrast_of_pictures(const std::vector<CountedFrame>& frames,
                                      const WhyUnknown& no_curve) {
  std::vector<Quantity> ranges;
  for (const CountedFrame& counted : frames) {
    ranges.push_back(*counted.frame->tone.range);
  }
  ContrastEstimate contrast = estimate_contrast(ranges);
  if (no_curve.kind != Unknown::no_target && !contrast.contrast_index) {
    contrast.contrast_index = no_curve;
  }
  return contrast;
}

}  // namespace

MeasuredRoll join_scans(std::vector<ScanReading> scans,
                        const std::optional<ExposureTarget>& target) {
  const std::vector<ScanReading> readings = with_repeats(std::move(scans));
  MeasuredRoll joined;
  RollMeasurement& roll = joined.measurement;
  for (const ScanReading& reading : readings) {
    roll.scans.push_back(reading.scan);
    joined.pictures.push_back(reading.picture);
  }
  TargetReading read;
  if (target && !target->empty()) {
    read = read_target(readings, *target);
    roll.scans = with_target(std::move(roll.scans), read);
  }
  const std::vector<CountedFrame> frames = counted_frames(roll.scans);
  roll.contrast =
      read.sensitometry ? read.contrast : contrast_of_pictures(frames, read.sensitometry.why());
  roll.sensitometry = std::move(read.sensitometry);
  roll.target_cautions = std::move(read.cautions);
  roll.medians = medians_of(frames);
  return joined;
}

}  // namespace fogline
