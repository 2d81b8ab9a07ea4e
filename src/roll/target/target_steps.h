#pragma once

#include "roll/reading/scan_reading.h"

#include <fogline/roll/exposure_target.h>

#include <optional>
#include <vector>

namespace fogline {

/// A frame of the roll, by its scan and its place in it.
struct FrameIndex {
  std::size_t scan = 0;
  std::size_t frame = 0;
};

/// Exposed steps of a roll, net of each strip's base plus fog, with what they share, and why there
/// are none or what is doubtful about them.
struct TargetSteps {
  ExposedSteps exposed;
  /// Where each exposed step lies, and how it is told there.
  struct Place {
    std::size_t scan = 0;
    int strip = 0;
    StepMeasurement step;
  };
  std::vector<Place> places;
  /// Frames that belong to the target: no pictures.
  std::vector<FrameIndex> frames;
  std::vector<Caution> cautions;
  /// All exposures may be shifted together: why their places along log H aren't known.
  std::optional<WhyUnknown> place_doubt;
  /// Why no curve can be laid through them.
  std::optional<WhyUnknown> failure;
};

/// Of a bracket, marked areas and metered tones, log H from the metered exposure.
TargetSteps metered_steps(const std::vector<ScanReading>& scans, const ExposureTarget& target);

/// Of a printed wedge, log H minus the wedge's density, or of lux seconds.
TargetSteps wedge_steps(const std::vector<ScanReading>& scans, const ExposedWedgeTarget& target);

}  // namespace fogline
