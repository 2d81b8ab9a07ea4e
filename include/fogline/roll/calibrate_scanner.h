#pragma once

#include <fogline/base/caution.h>
#include <fogline/base/scan_source.h>
#include <fogline/density/scanner_calibration.h>
#include <fogline/roll/scan_measurement.h>

#include <optional>
#include <vector>

namespace fogline {

/// What is known before a scan is read: data of `calibration/` (`shipped_scan_knowledge` has it).
struct ScanKnowledge;

/// What a calibration found, and what its page shows.
struct CalibrationRun {
  ScannerCalibration calibration;
  /// One a scan, in the order given; the steps' corners lie in the first for a wedge.
  std::vector<ScanPicture> pictures;
  std::vector<Caution> cautions;
  /// Where wedges lie in the scan, stored pixels: film, however dense.
  std::vector<std::vector<PointPx>> film_outlines;
};

/// Learns a scanner from a step wedge in one of its scans. A `device` that is told goes before what
/// a camera's own file says. Throws FileError where no wedge is found, the reference has fewer
/// steps than the scan or can't be laid on it without doubt, or codes don't fall while density
/// rises. `calibration.date` and `tool_version` stay empty: the caller knows them.
CalibrationRun calibrate_from_wedge(ScanSource& source, const WedgeReference& reference,
                                    ScannerDevice device, const ScanKnowledge& knowledge,
                                    const Progress& progress);

/// Learns the shape of a scanner's response from layers of one grey gel or dye film, whose
/// densities add: `layers[i]` of them in scan i, or, with a single scan, in its areas, lightest
/// first. `layer_density` of one layer, known with a standard uncertainty of 2 %, fixes the scale;
/// without it the result is of shape only: any power of light would fit as well. Throws FileError
/// as above.
CalibrationRun calibrate_from_layers(const std::vector<ScanSource*>& sources,
                                     const std::vector<int>& layers,
                                     std::optional<double> layer_density, ScannerDevice device,
                                     const ScanKnowledge& knowledge, const Progress& progress);

/// Doubt (95 %) of electronic shutter times, in stops; mechanical ones err by 0.1 to 0.3 (common
/// practice, no source).
inline constexpr double usual_shutter_doubt_stops = 0.1;

/// Learns a camera's response from pictures of one even target at known shutter times, each with
/// an independent doubt of `doubt_stops` (95 %). Throws FileError as above.
CalibrationRun calibrate_from_bracket(const std::vector<ScanSource*>& sources,
                                      const std::vector<double>& times_s, double doubt_stops,
                                      ScannerDevice device, const Progress& progress);

}  // namespace fogline
