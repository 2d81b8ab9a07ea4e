#include "roll/reading/scan_doubt.h"

#include "roll/reading/scanner_settings.h"

#include <algorithm>
#include <cmath>

namespace fogline {

namespace {

// How a scan shows its own doubts. What kinds of device usually do is knowledge of theirs.

/// Clear film beside the holes feels this part of what lamp and lens do between the rows.
constexpr double beside_holes_part = 0.4;
/// A part of the unevenness seen may repeat unseen.
constexpr double unevenness_share = 0.1;
/// Clipping of a part of the bare light: its median can hide this shift, growing with the part.
constexpr double least_clipped_share = 0.005;
constexpr double clipped_shift = 0.02;
constexpr double clipped_shift_per_share = 0.1;
/// Rounding to 8 bits on a display curve, as light.
constexpr double eight_bit_light = 0.0002;

}  // namespace

ScannerDevice device_of(const ScanInfo& info, ScannerDevice told,
                        const ScannerCalibration* scanner) {
  if (told != ScannerDevice::unknown) {
    return told;
  }
  if (info.camera) {
    return ScannerDevice::camera;
  }
  return scanner == nullptr ? ScannerDevice::unknown : scanner->device;
}

bool looks_finished(const ScanInfo& info, const StripReading& reading) {
  // A profile tells how a picture is to be shown, not what was done to it before.
  const bool told = info.transfer.source != TransferSource::assumed || info.bits > 8;
  const bool linear = info.transfer.kind == TransferKind::linear && told;
  const bool known_curve = info.transfer.source == TransferSource::option ||
                           info.transfer.source == TransferSource::scanner_file;
  if (linear || known_curve) {
    return false;
  }
  const DeviceKnowledge& devices = *reading.devices;
  const bool zero_seen = reading.zero != ZeroSource::none;
  const bool uneven = zero_seen && !reading.flattened &&
                      reading.lamp.unevenness_density() >
                          (info.bits <= 8 ? devices.camera_picture.uneven_density_8_bits
                                          : devices.camera_picture.uneven_density);
  if (info.camera || uneven) {
    return true;
  }
  // Thin film is usual too: only eight bits on a curve that nobody told make it suspect.
  return info.bits <= 8 && info.transfer.source == TransferSource::assumed && zero_seen &&
         reading.clear && reading.clear->visual < devices.camera_picture.thin_base_density;
}

DoubtSources doubt_of(const ScanInfo& info, const StripReading& reading) {
  const DeviceKnowledge& devices = *reading.devices;
  const ScannerCalibration* scanner = reading.scanner;
  const ScannerDevice device = device_of(info, reading.device, scanner);
  DoubtSources doubt;
  doubt.callier = reading.callier;
  const bool assumed = info.transfer.source == TransferSource::assumed;
  const bool camera = device == ScannerDevice::camera;
  const double bulge =
      (camera && !reading.flattened ? devices.camera_evenness : devices.scanner_evenness)
          .bulge_density;
  const double scatter = reading.clear ? reading.clear->scatter : 0.0;
  doubt.noise_density = 0.5 * scatter;
  const bool finished = looks_finished(info, reading);
  const double local = finished ? devices.camera_picture.local_density : 0.0;
  doubt.evenness_density =
      std::hypot(bulge, std::hypot(unevenness_share * reading.lamp.unevenness_density(), local));
  doubt.stray_transmittance =
      std::hypot(reading.stray_doubt, info.bits <= 8 ? eight_bit_light : 0.0);
  const bool guessed = info.bits > 8 && info.transfer.kind != TransferKind::linear;
  doubt.transfer_share = finished   ? devices.tone_curve.finished_picture_share
                         : !assumed ? devices.tone_curve.told_share
                         : guessed  ? devices.tone_curve.guessed_share
                                    : devices.tone_curve.assumed_share;
  const bool told = reading.device != ScannerDevice::unknown;
  doubt.angle_share_95 =
      told ? devices.angle.of(device).told_share_95 : devices.angle.of(device).share_95;
  if (scanner != nullptr) {
    doubt.scanner = scanner;
    doubt.stray_field = reading.stray_field;
    doubt.stray_transmittance = info.bits <= 8 ? eight_bit_light : 0.0;
    doubt.transfer_share = settings_differ(*scanner, info, reading)
                               ? devices.calibrated.other_settings_share
                               : devices.calibrated.same_settings_share;
    if (scanner->of_silver()) {
      const AngleOfLight& angle = devices.angle.of(scanner->device);
      doubt.angle_share_95 = angle.wedge_net_share_95;
      doubt.base_share_95 = angle.wedge_base_share_95;
      doubt.dense_base_share_95 = angle.wedge_dense_base_share_95;
    }
  }
  if (reading.zero != ZeroSource::none) {
    doubt.zero_density =
        reading.lamp.scatter_density() /
        std::sqrt(static_cast<double>(std::max<std::size_t>(1, reading.zero_samples.size())));
    if (reading.zero == ZeroSource::scanner_file) {
      doubt.zero_density = devices.calibrated.remembered_zero_density;
    }
    if (reading.zero_clipped > least_clipped_share) {
      doubt.clipped_shift_density = clipped_shift + clipped_shift_per_share * reading.zero_clipped;
    }
    if (finished && reading.bare_light > devices.camera_picture.bright_lamp) {
      doubt.highlight_compression = devices.camera_picture.compression;
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
