#pragma once

#include <fogline/base/channels.h>
#include <fogline/base/scan_source.h>
#include <fogline/density/scanner_calibration.h>
#include <fogline/density/wedge_reference.h>
#include <fogline/film/film_format.h>
#include <fogline/roll/exposure_target.h>
#include <fogline/roll/roll_measurement.h>
#include <fogline/roll/scan_knowledge.h>

#include <functional>
#include <memory>
#include <optional>
#include <vector>

namespace fogline {

/// Where the bare light path may be read.
enum class ClearReference { automatic, holes, gap, none };

/// What the user says of the roll, over what the scans show.
struct MeasureOptions {
  /// What is known of devices, films, tints and marks beforehand; measuring needs it
  /// (`shipped_prior_knowledge` has it).
  std::shared_ptr<const ScanKnowledge> knowledge;
  /// Absent: told from the picture.
  std::optional<FilmFormat> format;
  /// Length of a frame along the film in mm: half, square, panoramic frames. Absent: told from the
  /// picture, 36 mm first on 135 film.
  std::optional<double> frame_mm;
  ClearReference clear = ClearReference::automatic;
  /// A picture of the bare light, made with the same settings and of the same size; nullptr: none.
  /// Takes the unevenness of lamp and lens out, and is zero where the scan shows no bare light.
  ScanSource* blank = nullptr;
  /// The scanner's calibration; nullptr: none. Goes before what the file says of its codes.
  const ScannerCalibration* scanner = nullptr;
  /// The scan holds a step wedge of these densities: calibrates it by that first. nullptr: none.
  const WedgeReference* wedge = nullptr;
  /// Density per channel of the stock's clean base (roll card); absent: unknown.
  std::optional<PerChannel<double>> base_tint;
  /// Known exposures on the roll; nullptr: none.
  const ExposureTarget* target = nullptr;
};

/// Measures one scan of a roll. `frame_number` is the number of its first frame. Throws FileError
/// where the file breaks off while being read, where the blank doesn't fit the scan or stands at
/// the top code, where a colour scan has a grey scanner's calibration or the other way round, or
/// where the wedge can't be found or laid on its reference, or where a marked area isn't film; and
/// std::invalid_argument without `options.knowledge`.
ScanMeasurement measure_scan(ScanSource& source, const MeasureOptions& options, int frame_number,
                             const Progress& progress);

/// Joins the scans of one roll: marks frames scanned twice, medians over all frames, contrast.
/// `scans` in the order given by the user. With a target: its curve, and contrast from that; its
/// frames then count in no median.
RollMeasurement join_scans(std::vector<ScanMeasurement> scans,
                           const ExposureTarget* target = nullptr);

}  // namespace fogline
