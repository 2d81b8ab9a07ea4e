#include "roll/reading/scan_doubt.h"

#include "roll/reading/scanner_settings.h"
#include "roll/reading/wedge_silver.h"

#include <algorithm>
#include <cmath>

namespace fogline {

namespace {

// Half widths and standard uncertainties by kind of scan. Where no source is named they are common
// practice, checked by the bench's coverage.

/// Angle of light: Callier's factor spans 1.0 to 1.05 over a large near panel, 1.0 to 1.2 on
/// flatbeds and 1.2 to 1.4 in collimated scanners (common practice; the factor itself: Callier
/// 1909). A file made by a camera says so; nothing tells the others apart, so an unknown scanner
/// may read silver up to this share too dense (95 of 100; 1.43 read for 1). A silver wedge would
/// take it out.
constexpr double camera_angle_share = 0.05;
constexpr double unknown_angle_share = 0.30;
constexpr double flatbed_angle_share = 0.2;
constexpr double film_scanner_angle_share = 0.4;
/// A camera's lens and panel bulge between the rows of holes by 0.03 to 0.06 (95 %).
constexpr double camera_bulge = 0.018;
/// A flatbed's lamp and sensor: what is left between the rows, and the light that a hole loses to
/// the sides (0.003 to 0.01).
constexpr double flatbed_bulge = 0.007;
/// Clear film beside the holes feels this part of what lamp and lens do between the rows.
constexpr double beside_holes_part = 0.4;
/// A part of the unevenness seen may repeat unseen.
constexpr double unevenness_share = 0.1;
/// Tone curve told by the file or the user: scanners keep it to a percent or two of density.
constexpr double told_curve_share = 0.02;
/// Tone curve assumed: an eight-bit file without a profile is near the display curve of
/// IEC 61966-2-1, seldom on it.
constexpr double assumed_curve_share = 0.05;
constexpr double assumed_camera_curve_share = 0.10;
/// A 16-bit file that doesn't tell: where the picture says "display curve", its exponent may be
/// anything from 1.8 to 2.4.
constexpr double guessed_curve_share = 0.10;
/// Cameras flatten their display curve near the top code: densities just under a nearly clipped
/// lamp may read three times too low.
constexpr double camera_compression = 3.5;
constexpr double bright_lamp = 0.75;
/// Clipping of a part of the bare light: its median can hide this shift, growing with the part.
constexpr double least_clipped_share = 0.005;
constexpr double clipped_shift = 0.02;
constexpr double clipped_shift_per_share = 0.1;
/// What a calibrated scanner drifts in scale from scan to scan, and what other settings than the
/// calibration's may add (exposure by the lamp is harmless, levels in the software are not).
constexpr double same_settings_share = 0.003;
constexpr double other_settings_share = 0.03;
/// Bare light that isn't in sight reads as it did in the calibration's scan, give or take what
/// lamps drift (common practice, no source).
constexpr double remembered_zero = 0.02;
/// Rounding to 8 bits on a display curve, as light.
constexpr double eight_bit_light = 0.0002;

double angle_share_of(ScannerDevice device) {
  switch (device) {
    case ScannerDevice::camera:
      return camera_angle_share;
    case ScannerDevice::flatbed:
      return flatbed_angle_share;
    case ScannerDevice::film_scanner:
      return film_scanner_angle_share;
    case ScannerDevice::unknown:
      break;
  }
  return unknown_angle_share;
}

}  // namespace

DoubtSources doubt_of(const ScanInfo& info, const StripReading& reading) {
  const ScannerCalibration* scanner = reading.scanner;
  const ScannerDevice told = scanner == nullptr ? ScannerDevice::unknown : scanner->device;
  const ScannerDevice device = info.camera ? ScannerDevice::camera : told;
  DoubtSources doubt;
  const bool assumed = info.transfer.source == TransferSource::assumed;
  const bool camera = device == ScannerDevice::camera;
  const double bulge = camera && !reading.flattened ? camera_bulge : flatbed_bulge;
  const double scatter = reading.clear ? reading.clear->scatter : 0.0;
  doubt.noise_density = 0.5 * scatter;
  doubt.evenness_density = std::hypot(bulge, unevenness_share * reading.lamp.unevenness_density());
  doubt.stray_transmittance =
      std::hypot(reading.stray_doubt, info.bits <= 8 ? eight_bit_light : 0.0);
  const bool guessed = info.bits > 8 && info.transfer.kind != TransferKind::linear;
  doubt.transfer_share = !assumed      ? told_curve_share
                         : info.camera ? assumed_camera_curve_share
                         : guessed     ? guessed_curve_share
                                       : assumed_curve_share;
  doubt.angle_share_95 = angle_share_of(device);
  if (scanner != nullptr) {
    doubt.scanner = scanner;
    doubt.stray_field = reading.stray_field;
    doubt.stray_transmittance = info.bits <= 8 ? eight_bit_light : 0.0;
    doubt.transfer_share =
        settings_differ(*scanner, info, reading) ? other_settings_share : same_settings_share;
    if (scanner->of_silver()) {
      const WedgeSilver silver = wedge_silver(scanner->device);
      doubt.angle_share_95 = silver.net_share_95;
      doubt.base_share_95 = silver.base_share_95;
      doubt.dense_base_share_95 = silver.dense_base_share_95;
    }
  }
  if (reading.zero != ZeroSource::none) {
    doubt.zero_density =
        reading.lamp.scatter_density() /
        std::sqrt(static_cast<double>(std::max<std::size_t>(1, reading.zero_samples.size())));
    if (reading.zero == ZeroSource::scanner_file) {
      doubt.zero_density = remembered_zero;
    }
    if (reading.zero_clipped > least_clipped_share) {
      doubt.clipped_shift_density = clipped_shift + clipped_shift_per_share * reading.zero_clipped;
    }
    if (info.camera && assumed && reading.bare_light > bright_lamp) {
      doubt.highlight_compression = camera_compression;
    }
  }
  return doubt;
}

DoubtSources doubt_of_clear_film(const ScanInfo& info, const StripReading& reading) {
  DoubtSources doubt = doubt_of(info, reading);
  if (reading.zero == ZeroSource::perforations && reading.clear &&
      reading.clear->source == BaseFogSource::rebate) {
    doubt.evenness_density *= beside_holes_part;
  }
  return doubt;
}

}  // namespace fogline
