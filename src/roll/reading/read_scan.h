#pragma once

#include "density/stray_light.h"
#include "film/film_layout.h"
#include "roll/reading/strip_reading.h"

#include <fogline/roll/calibrate_scanner.h>
#include <fogline/roll/measure_roll.h>

#include <optional>
#include <vector>

namespace fogline {

/// One scan on its way: what was found and read of it.
struct ScanWork {
  ScanGrid grid;
  FilmLayout layout;
  /// A step wedge was found where film was looked for, and nothing else.
  bool wedge_alone = false;
  StrayLight stray;
  std::vector<StripReading> readings;
};

/// Decides by which calibration a scan is read, if any, and sets the source's transfer: that of a
/// wedge in the scan itself, else the scanner's. Throws FileError where it can't be used.
class ScanScanner {
 public:
  ScanScanner(ScanSource& source, const MeasureOptions& options);

  [[nodiscard]] const ScannerCalibration* calibration() const {
    return own_ ? &own_->calibration : scanner_;
  }
  /// The wedge in the scan itself, with its calibration.
  [[nodiscard]] const std::optional<CalibrationRun>& own_wedge() const { return own_; }

 private:
  const ScannerCalibration* scanner_ = nullptr;
  std::optional<CalibrationRun> own_;
};

/// Reads a scan: finds the film, tells stray light, reads every strip. Where the file doesn't tell
/// how its codes become light, the picture is asked.
ScanWork read_scan(ScanSource& source, const MeasureOptions& options, const ScanScanner& scanner,
                   const Progress& progress);

}  // namespace fogline
