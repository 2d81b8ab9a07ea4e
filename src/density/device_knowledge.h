#pragma once

#include <fogline/density/scanner_calibration.h>

namespace fogline {

/// What the angle of a kind of device's light does to silver: directed light reads it Callier's
/// factor too dense (Callier 1909).
struct AngleOfLight {
  /// Silver may be read up to this share too dense where nothing corrects it (95 of 100).
  double share_95 = 0.0;
  /// The factor to take out where the kind is told, and how far it may be off then: half width
  /// (95 %), share of the net density. Where a silver wedge calibrated, it reads the wedge's silver
  /// as dense as the film's, so any factor that is taken for both reads silver true.
  double callier = 0.0;
  double told_share_95 = 0.0;
  /// The film's base is no silver, and is read as wrong as that factor is: half widths (95 %),
  /// shares of its density, in clear film and under dense silver.
  double wedge_base_share_95 = 0.0;
  double wedge_dense_base_share_95 = 0.0;
  /// Film and wedge differ in their factor: half width (95 %), share of the net density.
  double wedge_net_share_95 = 0.0;

  bool operator==(const AngleOfLight&) const = default;
};

/// What lamp and lens do between the places where bare light is read, as densities.
struct DeviceEvenness {
  /// Between the rows of holes: standard uncertainty.
  double bulge_density = 0.0;
  /// A wedge's steps lie in other light than the bare light beside it: standard uncertainty.
  double wedge_density = 0.0;

  bool operator==(const DeviceEvenness&) const = default;
};

/// Doubt of the scale of density that a tone curve leaves: standard uncertainties, shares.
struct ToneCurveDoubt {
  double told_share = 0.0;
  double assumed_share = 0.0;
  double finished_picture_share = 0.0;
  /// Told by the picture alone that it is some display curve.
  double guessed_share = 0.0;

  bool operator==(const ToneCurveDoubt&) const = default;
};

/// What an own calibration leaves in doubt.
struct CalibratedDevice {
  /// Scale of density, standard uncertainty as a share: with the calibration's settings, others.
  double same_settings_share = 0.0;
  double other_settings_share = 0.0;
  /// Bare light remembered from the calibration's scan: standard uncertainty of zero, density.
  double remembered_zero_density = 0.0;
  /// A nominal wedge's steps about their slope (density), and the slope (share).
  double nominal_step_density = 0.0;
  double nominal_slope_share = 0.0;
  /// Layers of gel: one against the next (density); its density where told, and the scale where it
  /// isn't (shares).
  double layer_density = 0.0;
  double layer_share = 0.0;
  double unknown_scale_share = 0.0;

  bool operator==(const CalibratedDevice&) const = default;
};

/// What cameras do to the top of their finished pictures' tone curve.
struct CameraPicture {
  /// Densities just under a nearly clipped lamp may read so many times too low.
  double compression = 0.0;
  /// Share of the full light from which on the bare light lies in the curve's shoulder.
  double bright_lamp = 0.0;
  /// Light that falls off by more, as a density, is a lens's over a panel: in eight bits, and in
  /// more, where scanners keep masks and lamps of their own.
  double uneven_density_8_bits = 0.0;
  double uneven_density = 0.0;
  /// What local contrast and sharpening do to a place by its neighbours: standard uncertainty of
  /// its density.
  double local_density = 0.0;
  /// A base that reads thinner than this in a finished picture has most likely been flattened.
  double thin_base_density = 0.0;

  bool operator==(const CameraPicture&) const = default;
};

/// Parts of a scan's doubts that its colour channels don't have in common.
struct ColouredShares {
  double zero = 0.0;
  double clipping = 0.0;
  double curve = 0.0;
  double compression = 0.0;
  double stray = 0.0;
  /// What lossy compression does to colour, density.
  double lossy_density = 0.0;

  bool operator==(const ColouredShares&) const = default;
};

/// A value for each kind of device.
template <typename Value>
struct ByDevice {
  Value camera;
  Value flatbed;
  Value film_scanner;
  Value unknown;

  [[nodiscard]] const Value& of(ScannerDevice device) const {
    switch (device) {
      case ScannerDevice::camera:
        return camera;
      case ScannerDevice::flatbed:
        return flatbed;
      case ScannerDevice::film_scanner:
        return film_scanner;
      case ScannerDevice::unknown:
        break;
    }
    return unknown;
  }

  bool operator==(const ByDevice&) const = default;
};

/// What scanners and cameras usually do to light. Shipped in `calibration/devices.toml`, each table
/// with its source; a default one holds nothing.
struct DeviceKnowledge {
  ByDevice<AngleOfLight> angle;
  DeviceEvenness camera_evenness;
  DeviceEvenness scanner_evenness;
  ToneCurveDoubt tone_curve;
  CalibratedDevice calibrated;
  CameraPicture camera_picture;
  ColouredShares coloured;
  /// Stray light from this share on is strong, and so is unevenness from this density on: worth a
  /// word of advice.
  double strong_stray_share = 0.0;
  double strong_unevenness_density = 0.0;

  bool operator==(const DeviceKnowledge&) const = default;
};

}  // namespace fogline
