#pragma once

#include <fogline/base/quantity.h>
#include <fogline/base/refusal.h>
#include <fogline/base/scan_source.h>
#include <fogline/density/scanner_calibration.h>
#include <fogline/film/film_format.h>
#include <fogline/roll/exposure_target.h>
#include <fogline/roll/roll_measurement.h>
#include <fogline/roll/scan_measurement.h>

#include <functional>
#include <memory>
#include <optional>
#include <string>
#include <vector>

namespace fogline {

/// What is known before a scan is read: data of `calibration/` (`shipped_scan_knowledge` has it).
struct ScanKnowledge;

/// Where the bare light path may be read.
enum class ClearReference { automatic, holes, gap, none };

/// What the user says of the roll, over what the scans show.
struct MeasureOptions {
  /// Measuring needs it.
  std::shared_ptr<const ScanKnowledge> knowledge;
  /// Absent: told from the picture.
  std::optional<FilmFormat> format;
  /// Length of a frame along the film in mm: half, square, panoramic frames. Absent: told from the
  /// picture, 36 mm first on 135 film.
  std::optional<double> frame_mm;
  ClearReference clear = ClearReference::automatic;
  /// A picture of the bare light, made with the same settings and of the same size; nullptr: none.
  /// Takes the unevenness of lamp and lens out, and is zero where the scan shows no bare light. It
  /// is surveyed once for each scan, by the scan's tone curve where that is a calibration's.
  std::shared_ptr<ScanSource> blank;
  /// What made the scans: how dense silver reads depends on it. Goes before what a file says of
  /// itself and a calibration of its device; unknown: they tell.
  ScannerDevice device = ScannerDevice::unknown;
  /// The scanner's calibration. Goes before what the file says of its codes.
  std::optional<ScannerCalibration> scanner;
  /// The scan holds a step wedge of these densities: calibrates it by that first.
  std::optional<WedgeReference> wedge;
  /// Density per channel of the stock's clean base (roll card); absent: unknown.
  std::optional<PerChannel<double>> base_tint;
  /// Known exposures on the roll.
  std::optional<ExposureTarget> target;

  /// Throws std::invalid_argument for what can't be meant: no knowledge, a frame without length, a
  /// base whose densities aren't numbers, a bracket whose exposures and doubts differ in number or
  /// that has none, a marked area without size, a doubt below zero.
  void check() const;
};

/// A scan of a roll that isn't open yet.
struct RollScan {
  std::string file;
  /// Opens it when its turn comes; it is closed before the next, so that one is in memory at a
  /// time. May throw FileError.
  std::function<std::unique_ptr<ScanSource>()> open;
  Progress progress;
  /// Told at once where it can't be read; may be empty.
  std::function<void(const FileError&)> on_failure;
};

/// What a roll's scans say, and a picture of each scan that could be read, in their order.
struct MeasuredRoll {
  RollMeasurement measurement;
  std::vector<ScanPicture> pictures;
};

/// Measures a roll from all its scans, in the order given, its frames numbered through. Each scan
/// is read by itself: the film found, zero, base plus fog, tones, tint and marks read; then frames
/// scanned twice are known again, the target's exposures laid on what was read and their curve
/// fitted, and medians and contrast taken over all frames.
///
/// A scan that can't be opened or read becomes an UnreadFile: where the file breaks off, where the
/// blank doesn't fit the scan or stands at the top code, where a colour scan has a grey scanner's
/// calibration or the other way round, where the wedge can't be found or laid on its reference, or
/// where a marked area isn't film. Throws std::invalid_argument as `options.check()`.
MeasuredRoll measure_roll(const std::vector<RollScan>& scans, const MeasureOptions& options);

/// A roll of one scan that is open already. Throws FileError where it can't be read.
MeasuredRoll measure_roll(ScanSource& scan, const MeasureOptions& options);

}  // namespace fogline
