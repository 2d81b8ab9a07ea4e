#pragma once

#include <fogline/base/known.h>
#include <fogline/base/quantity.h>
#include <fogline/base/raster.h>
#include <fogline/base/scan_source.h>
#include <fogline/density/doubt.h>

#include <array>
#include <optional>
#include <string>
#include <vector>

namespace fogline {

/// One step of a wedge as its certificate (or its nominal step) gives it.
struct ReferenceStep {
  /// As the reference names it.
  std::string label;
  /// Visual diffuse density.
  double density = 0.0;
  /// Expanded uncertainty (95 %) of it where the reference gives one.
  std::optional<double> u95;
};

/// What is known of a wedge's densities.
struct WedgeReference {
  /// As given: a file's name, or "21x0.15".
  std::string name;
  /// Lightest first, strictly rising.
  std::vector<ReferenceStep> steps;
  /// True for `--steps`: densities as designed, nobody measured them.
  bool nominal = false;
  /// The lightest step in the scan is this one of them, counted from 1, where somebody told.
  std::optional<int> first_in_sight = std::nullopt;
};

/// Expanded uncertainty of a certified step where the reference tells none (an instrument's usual
/// +-0.02 D; common practice, no source).
inline constexpr double usual_certificate_u95 = 0.02;

/// A nominal wedge of `steps` steps (5 to 41) rising by `step_density` (above 0): 0.05, 0.05 +
/// step,
/// ...; the first step of commercial tablets is about 0.05 (references: pages of makers; from
/// memory).
WedgeReference nominal_wedge(int steps, double step_density);

/// How a scanner's response was learned.
enum class CalibrationMethod { wedge, nominal_wedge, layers, bracket };

/// Kind of device, as its owner says: it decides how much denser than diffuse light it reads
/// silver. A camera's file may tell; nothing tells a flatbed from a film scanner.
enum class ScannerDevice { unknown, flatbed, film_scanner, camera };

/// One known light that the scanner was shown.
struct CalibrationStep {
  /// Number in the reference, 1 the lightest (layers: number of layers; bracket: number of the
  /// shot).
  int number = 0;
  /// As the reference names it.
  std::string label;
  /// The area read, stored pixels, clockwise from top left; all zero where a whole picture was
  /// read.
  std::array<PointPx, 4> corners_px{};
  /// Median code, as a share of the full code, per channel.
  PerChannel<double> code{};
  /// Density by the reference.
  double reference_density = 0.0;
  /// Visual density by the fitted response and its u95 (without the certificate's own).
  double density = 0.0;
  double u95 = 0.0;
  /// Density read with the response that the file itself tells, before calibration.
  std::optional<double> uncalibrated_density;
  /// False where it took no part in the fit.
  bool used = true;
  /// Left out as not fitting the others: dirt, a scratch, a wrong reference.
  bool outlier = false;
  /// Why it isn't used; absent where it is.
  std::optional<WhyUnknown> left_out;

  friend bool operator==(const CalibrationStep&, const CalibrationStep&) = default;
};

/// Doubt of a calibrated density, as standard uncertainties.
struct CalibratedDoubt {
  double density = 0.0;
  /// From the fit: noise, spacing and certificate of the steps.
  double fit = 0.0;
  /// From the share of stray light, which couldn't be told better, for a film in other light than
  /// the wedge was (see `stray_doubt_in`).
  double stray = 0.0;
  /// How bright the surroundings of the wedge's step of this density were: its stray light over
  /// that of an evenly lit field.
  StrayField field = even_field(1.0);
};

/// Stray light as the calibration's scan told it. A black offset is the same everywhere, so it is
/// part of the response.
struct CalibratedStray {
  /// Share of an evenly lit field and its standard uncertainty: what comes from afar. Glare that
  /// reaches less than a step's width is in proportion to the step's own light and shows nowhere.
  double share = 0.0;
  double share_doubt = 0.0;
  /// Opaque areas in sight told it; else it is the wedge's own dense steps with a usual share.
  bool measured = false;
};

/// What a scanner (or camera and light panel) makes of light, learned once and used on every scan
/// with the same settings.
struct ScannerCalibration {
  CalibrationMethod method = CalibrationMethod::wedge;
  /// Only the curve's shape is known (layers of unknown density): densities are in this scanner's
  /// own unit.
  bool shape_only = false;
  /// Settings of the scans it was learned from.
  int bits = 16;
  int channels = 3;
  ScannerDevice device = ScannerDevice::unknown;
  /// Code of the bare light as a share of full code, per channel: zero's code. Absent where it
  /// wasn't in sight or stood at the top code.
  std::optional<PerChannel<double>> bare_code;
  /// From codes to the directed light that the scanner sees.
  CodeCurves curves;
  /// Callier's factor with which it was read from silver and by which silver is read again; 1 where
  /// the known lights weren't silver. All densities below are diffuse.
  double callier = 1.0;
  /// Rising in density from 0.
  std::vector<CalibratedDoubt> doubt;
  /// Slope of the whole scale: standard uncertainty as a share of density (nominal wedges, shutter
  /// times, one known layer).
  double slope_doubt_share = 0.0;
  /// Standard uncertainty that all densities of the certificate share.
  double certificate_doubt = 0.0;
  CalibratedStray stray;
  /// Lightest and deepest density that were shown; deeper ones are lower bounds.
  double shown_from_density = 0.0;
  double shown_to_density = 0.0;
  /// Highest density told within 0.1 (95 %).
  double density_limit = 0.0;
  /// Root mean square of the used steps' differences from the reference, visual density, up to the
  /// limit.
  double residual_rms = 0.0;
  std::vector<CalibrationStep> steps;
  /// Name of the reference, names of the scans' files.
  std::string reference;
  std::vector<std::string> source_files;
  /// ISO 8601, as the caller gave it.
  std::string date;
  /// Of the calibration file that it was read from or written to; empty before.
  std::string checksum;
  std::string tool_version;

  /// Learned from silver: what the angle of light does to silver is in it.
  [[nodiscard]] bool of_silver() const {
    return method == CalibrationMethod::wedge || method == CalibrationMethod::nominal_wedge;
  }

  /// Standard uncertainty of the stray light left on a film of a (diffuse) density, as a share of
  /// the bare light, where `field` is that at the film's place. A film that lies in the wedge's own
  /// light shares its error, which cancels; elsewhere the doubt of the share counts, and that of
  /// how far glare reaches.
  [[nodiscard]] double stray_doubt_in(const StrayField& field, double density) const;

  /// Doubt of the fit at a density, interpolated and beyond the ends held rising.
  [[nodiscard]] CalibratedDoubt doubt_at(double density) const;
};

}  // namespace fogline
