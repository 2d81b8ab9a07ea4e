#pragma once

#include "roll/reading/scan_reading.h"
#include "roll/reading/strip_reading.h"

#include <vector>

namespace fogline {

/// The numbers of one strip of a scan and of its frames, and where they were read.
struct StripNumbers {
  StripMeasurement strip;
  std::vector<FrameMeasurement> frames;
  /// One for each frame.
  std::vector<FrameSketch> sketches;
  std::vector<Outline> outlines;
};

/// `number` counts strips from 1, `first_frame` the frames of the roll; `densities` says whether
/// the scan tells any.
StripNumbers strip_numbers(const ScanInfo& info, const FilmStrip& film, const StripReading& reading,
                           int number, int first_frame, bool densities);

/// Base plus fog of a scan: that of its strips, weighted by the area read, their scatter in the
/// doubt.
Known<BaseFog> combined_base_fog(const std::vector<StripNumbers>& strips);

/// What the factory exposed on a scan's film. A density beyond what the scan tells is a lower
/// bound.
struct FactoryDensities {
  /// Median over the strips that show one.
  Known<Quantity> edge_print;
  /// Of the first strip that shows one.
  Known<Quantity> leader;
};

FactoryDensities factory_densities(const ScanInfo& info, const std::vector<StripReading>& readings);

}  // namespace fogline
