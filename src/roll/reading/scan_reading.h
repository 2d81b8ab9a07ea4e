#pragma once

#include "roll/reading/exposed_reading.h"

#include <fogline/roll/measure_roll.h>

#include <vector>

namespace fogline {

/// Mean densities of a frame on a coarse mesh (16 along, 12 across), by which a frame scanned twice
/// is known again; empty where the frame is blank or unread.
using FrameSketch = std::vector<float>;

/// What one scan alone says, and what joining it with the others of its roll needs: lives only
/// while the roll is measured.
struct ScanReading {
  ScanMeasurement scan;
  /// One for each frame of the scan.
  std::vector<FrameSketch> sketches;
  /// Nothing where the roll has no target or the scan tells no densities.
  ScanExposures exposures;
  ScanPicture picture;
};

/// Reads one scan of a roll. `frame_number` is the number of its first frame. Throws FileError as
/// told at measure_roll.
ScanReading read_one_scan(ScanSource& source, const MeasureOptions& options, int frame_number,
                          const Progress& progress);

}  // namespace fogline
