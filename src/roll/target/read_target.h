#pragma once

#include "roll/target/target_steps.h"

#include <fogline/roll/exposure_target.h>
#include <fogline/roll/roll_measurement.h>

#include <vector>

namespace fogline {

/// What a target tells of its roll.
struct TargetReading {
  Known<Sensitometry> sensitometry = Unknown::no_target;
  /// By the curve; only where there is one.
  ContrastEstimate contrast;
  /// What couldn't be done, and what is doubtful.
  std::vector<Caution> cautions;
  /// Steps with what the curve left out, and the frames that are no pictures.
  std::vector<TargetSteps::Place> steps;
  std::vector<FrameIndex> frames;
};

/// Lays a target's exposures on what the scans read, fits the characteristic curve and reads it.
TargetReading read_target(const std::vector<ScanReading>& scans, const ExposureTarget& target);

}  // namespace fogline
