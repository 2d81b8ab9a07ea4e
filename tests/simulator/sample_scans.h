// The scans that people get with the program to try it on.
#pragma once

#include "simulator/scenario.h"
#include "simulator/wedge_scan.h"

#include <string>
#include <vector>

namespace filmsim {

struct SampleScan {
  std::string name;  ///< of the file, without its ending
  Scenario scenario;
};

std::vector<SampleScan> sample_scans();

/// A step wedge on the scanner of `good-135`, with its settings.
WedgePlan sample_wedge();

}  // namespace filmsim
