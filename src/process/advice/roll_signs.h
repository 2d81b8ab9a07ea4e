#pragma once

#include <fogline/process/finding.h>
#include <fogline/roll/roll_measurement.h>

#include <vector>

namespace fogline {

/// From this probability on a finding is acted on, and from the lower one on looked at (common
/// practice, no source; acting is cheap: a bath more, or a look).
inline constexpr double likely = 0.5;
inline constexpr double possible = 0.2;

/// Probabilities, 0 to 1, of what advice answers to, from findings and from the kinds of tint.
struct RollSigns {
  double dye_left = 0.0;
  double fixer_haze = 0.0;
  double stained = 0.0;
  /// The stain grows with silver: a staining developer's own, and no fault.
  double image_stain = 0.0;
  double drying_marks = 0.0;
  double dirty = 0.0;
  /// Marks that no bath mends: scratches, air bells, uneven development, light.
  double past_mending = 0.0;
  /// Too much or too little silver: exposure, development or fog.
  double silver_off = 0.0;
  double not_exposed = 0.0;
  double not_developed = 0.0;
  double weak_developer = 0.0;
  /// The tint may be the stock's own: what its clean base looks like isn't known.
  bool tint_may_be_stock = false;
  /// The tint was looked at and none was found.
  bool tint_seen_clean = false;
};

RollSigns read_roll_signs(const RollMeasurement& roll, const std::vector<Finding>& findings);

/// Greatest confidence of a finding, 0 where it isn't among them.
double confidence_of(const std::vector<Finding>& findings, Cause cause);

}  // namespace fogline
