#pragma once

#include "record/invented_roll.h"

#include <fogline/roll/exposure_target.h>

#include <cmath>

namespace fogline::invented {

/// A curve of a film that never was, through eleven exposures a stop apart.
inline Sensitometry sensitometry(double contrast = 0.6) {
  ExposedSteps exposed;
  for (int i = 0; i < 11; ++i) {
    const double log_h = stop_log_h * (i - 5);
    const double net = contrast / 4.5 * std::log1p(std::exp(4.5 * (log_h + 0.95)));
    exposed.steps.push_back({"frame " + std::to_string(i + 1), log_h, 0.01, net, 0.005, {}});
  }
  exposed.base_fog = 0.0;
  exposed.base_fog_doubt = 0.003;
  ExposureScale scale;
  scale.metered_log_h = 0.0;
  scale.exposure_index = 400.0;
  return read_sensitometry(*fit_characteristic_curve(exposed), scale);
}

/// The invented roll, as a bracket.
inline RollMeasurement bracket_roll(double contrast = 0.6) {
  RollMeasurement roll;
  roll.scans.push_back(scan("bracket.tif"));
  for (FrameMeasurement& frame : roll.scans.front().frames) {
    frame.target = true;
  }
  roll.sensitometry = sensitometry(contrast);
  roll.contrast.method = ContrastMethod::bracket;
  roll.contrast.contrast_index = roll.sensitometry->readings.contrast_index;
  return roll;
}

}  // namespace fogline::invented
