// One scanner, calibrated by a simulated wedge and used on a strip and on patches of known density.
#pragma once

#include "scan_case.h"
#include "simulator/wedge_sampling.h"

#include <array>
#include <cstdint>
#include <optional>
#include <string>
#include <vector>

namespace bench {

struct CalibrationCase {
  std::uint64_t seed = 1;
  filmsim::CalibratedPair plan;
  bool large = false;
  bool like_silver = true;
  int bits = 16;
  std::string device;
  bool device_told = false;
  std::string trouble;  // why there is no calibration
  // The wedge: steps that show (their light isn't at the top code and differs from the next step's
  // by more than noise), how many of those were found, any found where none is.
  int steps_to_find = 0;
  int steps_found = 0;
  bool direction_right = false;
  bool reference_right = false;
  bool dirty = false;
  bool dirty_named = false;
  int falsely_named = 0;
  double residual_rms = 0.0;
  double limit = 0.0;
  double stray_error = 0.0;  // share told less the true share from afar
  double stray_doubt = 0.0;  // its standard uncertainty as told
  bool stray_measured = false;
  /// Patches of the film's silver, with and without the calibration.
  std::vector<Compared> patches;
  std::vector<Compared> patches_uncalibrated;
  /// The strip as measured with the calibration and without.
  ScanCase strip;
  ScanCase strip_uncalibrated;
};

CalibrationCase run_calibration_case(const filmsim::WedgeKind& kind, std::uint64_t seed,
                                     const std::string& folder);

/// One other way to calibrate, beside the wedge's truth on the same scanner: differences of density
/// at 0.5, 1.0, 1.5, within both u95.
struct OtherWay {
  std::string trouble;
  std::vector<Compared> densities;
};
OtherWay run_layers_case(std::uint64_t seed, const std::string& folder);
OtherWay run_bracket_case(std::uint64_t seed, const std::string& folder);

}  // namespace bench
