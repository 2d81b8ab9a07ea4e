#pragma once

#include <fogline/density/scanner_calibration.h>

#include <string>
#include <vector>

namespace fogline {

/// True where text begins as ISO 28178 (CGATS.17) text does.
bool is_cgats(const std::string& text);

/// Steps of the first table with SAMPLE_ID and D_VIS, as listed. Throws FileError.
std::vector<ReferenceStep> steps_from_cgats(const std::string& text, const std::string& file);

/// A number, or a FileError that names the line.
double density_from_text(const std::string& text, const std::string& file, int line);

}  // namespace fogline
