#pragma once

#include <fogline/roll/exposure_target.h>
#include <fogline/roll/roll_measurement.h>

#include <optional>
#include <vector>

namespace fogline {

/// Exposed steps of a roll, net of each strip's base plus fog, with what they share, and why there
/// are none or what is doubtful about them.
struct TargetSteps {
  ExposedSteps exposed;
  /// The scan and the place in its steps of each exposed step.
  struct Origin {
    std::size_t scan = 0;
    std::size_t step = 0;
  };
  std::vector<Origin> origins;
  std::vector<Caution> cautions;
  /// All exposures may be shifted together: why their places along log H aren't known.
  std::optional<WhyUnknown> place_doubt;
  /// Why no curve can be laid through them.
  std::optional<WhyUnknown> failure;
};

/// Of a bracket, marked areas and metered tones, log H from the metered exposure. Writes the steps
/// into the scans and marks a bracket's frames.
TargetSteps metered_steps(RollMeasurement& roll, const ExposureTarget& target);

/// Of a printed wedge, log H minus the wedge's density, or of lux seconds.
TargetSteps wedge_steps(RollMeasurement& roll, const ExposedWedgeTarget& target);

}  // namespace fogline
