#pragma once

#include <fogline/base/refusal.h>
#include <fogline/density/scanner_calibration.h>

#include <optional>
#include <vector>

namespace fogline {

/// One known light as a scanner saw it.
struct ShownLight {
  /// Number, label, place, codes, reference density and (optional) uncalibrated density are taken
  /// over into the calibration's steps; `left_out` says why a light can't be used.
  CalibrationStep step;
  /// Standard uncertainty of the reference density, its own part.
  double density_doubt = 0.0;
  /// Standard uncertainty of the codes, as shares of the full code.
  PerChannel<double> code_doubt{};
  /// At its place.
  PerChannel<StrayField> stray_field{};
};

/// What a response is fitted to.
struct ResponseProblem {
  int channels = 1;
  /// In order of rising density; density 0 is the bare light (or the brightest shot).
  std::vector<ShownLight> lights;
  /// The bare light itself; absent where it is out of sight or clipped.
  std::optional<ShownLight> bare;
  /// Callier's factor with which the scanner reads the lights' densities; 1 for what isn't silver.
  double callier = 1.0;
  /// The scanner's share of stray light before the fit, with its standard uncertainty (0: known):
  /// the shape of the response sharpens it.
  CalibratedStray stray;
  /// Whether dirty lights may be left out. Two in three stay in any case.
  bool may_leave_out = true;
};

/// A fitted response, or why there is none.
struct ResponseOutcome {
  /// Curves, doubt, steps, limits, stray light and residuals are filled, the rest is the caller's.
  ScannerCalibration calibration;
  /// Absent where the fit succeeded.
  std::optional<Refusal> failure;
};

/// Fits each channel's code as a smooth, falling function of the light that reached it (transmitted
/// plus stray), all in the directed light that the scanner sees: log code over log light, a
/// straight line that may bend (see `fit_smooth_curve`). One light after another that doesn't fit
/// the others (left-out residual beyond four standard deviations in most channels, and at least
/// 0.015 in density) is left out and named. Shares of stray light from 0 to 4 % are weighed by how
/// well each lets the response be simple, against what was known before; what stays unknown goes
/// into the doubt.
ResponseOutcome fit_response(const ResponseProblem& given);

}  // namespace fogline
