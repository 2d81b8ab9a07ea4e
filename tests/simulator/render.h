// The whole simulation in one call.
#pragma once

#include "simulator/truth.h"

#include <string>

namespace filmsim {

struct Simulated {
  Scenario scenario;
  Picture picture;
  Truth truth;
};

/// The same scenario gives the same scan to the last bit. The result's truth points into its own
/// scenario: move it, don't copy it apart.
Simulated render(Scenario scenario);

/// The truth as JSON text, two blanks an indent.
std::string truth_json(const Simulated& simulated);

/// Writes the scan in its own file kind and its truth beside it as NAME.truth.json. The path's
/// ending is replaced by that of the file kind (.tif, .png, .jpg); returns the path written.
/// Throws std::runtime_error if a file can't be written.
std::string write_scan(const Simulated& simulated, const std::string& wanted_path);

}  // namespace filmsim
