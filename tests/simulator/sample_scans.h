// The four scans that people get with the program to try it on.
#pragma once

#include "simulator/scenario.h"

#include <string>
#include <vector>

namespace filmsim {

struct SampleScan {
  std::string name;  ///< of the file, without its ending
  Scenario scenario;
};

std::vector<SampleScan> sample_scans();

}  // namespace filmsim
