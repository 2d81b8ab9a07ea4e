// One sensitometric test as a scan: a bracket or a printed wedge is rendered, its scanner
// calibrated by a wedge (or not), the scan measured as the program does, and the curve's numbers
// compared.
#pragma once

#include "curve_case.h"
#include "simulator/target_sampling.h"

#include <cstdint>
#include <string>
#include <vector>

namespace bench {

struct TargetCase {
  std::uint64_t seed = 0;
  std::vector<NumberCase> numbers;
  /// Steps that were given an exposure, and those of them whose exposure is right.
  int steps = 0;
  int steps_right = 0;
  int steps_made = 0;
  bool ambiguous = false;
  bool place_doubtful = false;
  std::string trouble;
};

/// `folder` holds the scans while they are read.
TargetCase run_target_case(const filmsim::TargetWish& wish, std::uint64_t seed,
                           const std::string& folder);

}  // namespace bench
